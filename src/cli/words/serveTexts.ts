import { withDecimalSign } from "../../core/units/numberWords.ts";
import { type ByLanguage, inEveryLanguage } from "../../core/words/words.ts";

/** What `serve` says, in one language; a language that lacks a word does not compile. */
export interface ServeTexts {
  readonly open: (address: string) => string;
  readonly notOpen: (address: string, reason: string) => string;
  readonly notInstalled: string;
  readonly needsToken: (host: string) => string;
  readonly shortToken: (least: number) => string;
  readonly noToken: string;
  readonly wrongHost: string;
  readonly nothingHere: string;
  readonly tooLarge: (megabytes: number) => string;
  readonly noJson: string;
  readonly busy: string;
  readonly noJob: string;
  readonly noFile: string;
  readonly tooLong: (seconds: number) => string;
  readonly ourFault: string;
}

const en: ServeTexts = {
  open: (address) =>
    `Laywright answers at ${address}; ${address}/openapi.json says what to ask for. Ctrl-C ends it.`,
  notOpen: (address, reason) => `${address} cannot be opened (${reason}). Give another --port or --host.`,
  notInstalled:
    "The service needs two packages that are not installed. Install them: npm install hono @hono/node-server",
  needsToken: (host) =>
    `On ${host} other machines can ask. Give --token-file with a token that every request has to bring, or leave --host out.`,
  shortToken: (least) => `The token has fewer than ${least} characters. Take a longer one, drawn at random.`,
  noToken: "The token is missing or wrong. Send it as Authorization: Bearer TOKEN.",
  wrongHost: "The request was sent to another name than this machine's own. Send it to 127.0.0.1 or localhost.",
  nothingHere: "There is nothing at this address. /openapi.json says what there is.",
  tooLarge: (megabytes) => `The request is larger than ${megabytes} MB. Send less, or start with --most-megabytes.`,
  noJson: "The request is not JSON. Send Content-Type: application/json and a JSON group.",
  busy: "Too many jobs wait. Try again later.",
  noJob: "There is no such job. It was ended, or is too long ago.",
  noFile: "The job has no such file, or is not done.",
  tooLong: (seconds) => `Ended after ${seconds} s. Ask for less effort, or start with --most-seconds.`,
  ourFault: "Internal error; please report this and send us your file.",
};

const de: ServeTexts = {
  open: (address) =>
    `Laywright antwortet auf ${address}; was man fragen kann, steht in ${address}/openapi.json. Strg-C beendet es.`,
  notOpen: (address, reason) =>
    `${address} lässt sich nicht öffnen (${reason}). Geben Sie einen anderen --port oder --host an.`,
  notInstalled: "Für den Dienst fehlen zwei Pakete. Installieren Sie sie: npm install hono @hono/node-server",
  needsToken: (host) =>
    `Auf ${host} können andere Rechner fragen. Geben Sie --token-file mit einem Kennwort an, das jede Anfrage mitbringen muss, oder lassen Sie --host weg.`,
  shortToken: (least) =>
    `Das Kennwort hat weniger als ${least} Zeichen. Nehmen Sie ein längeres, zufällig gezogenes.`,
  noToken: "Das Kennwort fehlt oder stimmt nicht. Senden Sie es als Authorization: Bearer KENNWORT.",
  wrongHost:
    "Die Anfrage ging an einen anderen Namen als den dieses Rechners. Senden Sie sie an 127.0.0.1 oder localhost.",
  nothingHere: "Unter dieser Adresse steht nichts. /openapi.json nennt, was es gibt.",
  tooLarge: (megabytes) =>
    `Die Anfrage ist größer als ${withDecimalSign(String(megabytes), "de")} MB. Senden Sie weniger, oder starten Sie mit --most-megabytes.`,
  noJson: "Die Anfrage ist kein JSON. Senden Sie Content-Type: application/json und eine Gruppe in JSON.",
  busy: "Es warten zu viele Aufträge. Versuchen Sie es später wieder.",
  noJob: "Diesen Auftrag gibt es nicht. Er wurde beendet oder ist zu lange her.",
  noFile: "Der Auftrag hat keine solche Datei oder ist noch nicht fertig.",
  tooLong: (seconds) =>
    `Nach ${seconds} s beendet. Verlangen Sie weniger Aufwand, oder starten Sie mit --most-seconds.`,
  ourFault: "Interner Fehler; bitte melden Sie es uns und senden Sie Ihre Datei mit.",
};

/** What `serve` says, by language. */
export const SERVE_TEXTS: ByLanguage<ServeTexts> = inEveryLanguage({ en, de });
