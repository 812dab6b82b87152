import { pluralOf } from "../../core/units/numberWords.ts";
import { type ByLanguage, inEveryLanguage } from "../../core/words/words.ts";

const pluralEn = pluralOf("en");
const pluralDe = pluralOf("de");

/** What is said of work on many machines, in one language; a language that lacks a word does not compile. */
export interface QueueTexts {
  readonly noUrl: string;
  readonly notInstalled: string;
  readonly unreachable: (place: string, reason: string) => string;
  readonly away: (place: string) => string;
  readonly back: (place: string) => string;
  /** Nobody lays what a batch gives out. */
  readonly noWorker: string;
  /** Workers of other versions are there, none of this one. */
  readonly otherWorkers: (theirs: string, ours: string) => string;
  readonly otherBatches: (theirs: string, ours: string) => string;
  readonly ready: (place: string, threads: number) => string;
  readonly laid: (folder: string) => string;
  readonly failed: (folder: string, reason: string) => string;
  readonly ending: string;
  readonly ended: (lays: number) => string;
  /** What became of a lay that was given up, and each of its tries. */
  readonly givenUp: (tries: number) => string;
  readonly silent: string;
  readonly notPlans: (worker: string) => string;
  readonly wrongPlan: (worker: string, faults: string) => string;
  readonly notInFolder: (worker: string) => string;
  readonly leavesOut: string;
}

const en: QueueTexts = {
  noUrl: "--queue takes the address of a Redis store, such as redis://host:6379 or rediss://:PASSWORD@host:6380.",
  notInstalled:
    "Work on many machines needs two packages that are not installed. Install them: npm install bullmq ioredis",
  unreachable: (place, reason) =>
    `${place}: no answer${reason === "" ? "" : ` (${reason})`}. Check the address, the password and whether Redis is running there.`,
  away: (place) => `${place} does not answer. Trying again until it does.`,
  back: (place) => `${place} answers again.`,
  noWorker: "No worker has come yet. Start one on each machine: laywright worker --queue URL",
  otherWorkers: (theirs, ours) =>
    `The workers have version ${theirs}; this is ${ours}, and lays go to its own version only. Install the same version everywhere.`,
  otherBatches: (theirs, ours) =>
    `The batches here have version ${theirs}; this worker is ${ours} and takes none of their lays. Install the same version everywhere.`,
  ready: (place, threads) =>
    `Waiting for lays from ${place}, ${threads} at a time. Ctrl-C finishes those under way and ends.`,
  laid: (folder) => `Laid: ${folder}`,
  failed: (folder, reason) => `Failed: ${folder}: ${reason}`,
  ending: "Ending: the lays under way are finished. Ctrl-C once more ends at once.",
  ended: (lays) => pluralEn(lays, "1 lay done.", `${lays} lays done.`),
  givenUp: (tries) => `Given up after ${tries} tries:`,
  silent: "the worker fell silent",
  notPlans: (worker) => `what ${worker} sent back is no plan`,
  wrongPlan: (worker, faults) => `the plan of ${worker} is wrong: ${faults}`,
  notInFolder: (worker) =>
    `the plan of ${worker} is not in the folder of --plans: is it the same folder on both machines?`,
  leavesOut: "it leaves out pieces that have room",
};

const de: QueueTexts = {
  noUrl:
    "--queue nimmt die Adresse eines Redis-Speichers, etwa redis://rechner:6379 oder rediss://:PASSWORT@rechner:6380.",
  notInstalled:
    "Für die Arbeit auf vielen Rechnern fehlen zwei Pakete. Installieren Sie sie: npm install bullmq ioredis",
  unreachable: (place, reason) =>
    `${place}: keine Antwort${reason === "" ? "" : ` (${reason})`}. Prüfen Sie Adresse und Passwort, und ob Redis dort läuft.`,
  away: (place) => `${place} antwortet nicht. Es wird weiter versucht.`,
  back: (place) => `${place} antwortet wieder.`,
  noWorker: "Noch hilft kein Rechner mit. Starten Sie auf jedem: laywright worker --queue URL",
  otherWorkers: (theirs, ours) =>
    `Die Helfer haben Version ${theirs}; dies ist ${ours} und gibt nur an die eigene Version ab. Installieren Sie überall dieselbe Version.`,
  otherBatches: (theirs, ours) =>
    `Die Auftraggeber haben Version ${theirs}; dieser Helfer ist ${ours} und nimmt ihnen nichts ab. Installieren Sie überall dieselbe Version.`,
  ready: (place, threads) =>
    `Wartet auf Zuschnittpläne von ${place}, je ${threads} auf einmal. Strg-C macht Begonnenes fertig und endet.`,
  laid: (folder) => `Gelegt: ${folder}`,
  failed: (folder, reason) => `Gescheitert: ${folder}: ${reason}`,
  ending: "Es wird beendet: Begonnenes wird fertig. Noch einmal Strg-C bricht sofort ab.",
  ended: (lays) => pluralDe(lays, "1 Zuschnittplan gelegt.", `${lays} Zuschnittpläne gelegt.`),
  givenUp: (tries) => `Aufgegeben nach ${tries} Versuchen:`,
  silent: "der Helfer ist verstummt",
  notPlans: (worker) => `was ${worker} zurückgab, ist kein Plan`,
  wrongPlan: (worker, faults) => `der Plan von ${worker} ist falsch: ${faults}`,
  notInFolder: (worker) =>
    `der Plan von ${worker} liegt nicht im Ordner von --plans: Ist es auf beiden Rechnern derselbe?`,
  leavesOut: "er lässt Teile weg, für die Platz ist",
};

/** What is said of work on many machines, by language. */
export const QUEUE_TEXTS: ByLanguage<QueueTexts> = inEveryLanguage({ en, de });
