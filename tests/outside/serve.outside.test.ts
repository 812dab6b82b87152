// The service over real HTTP on the loopback address. Sources: OpenAPI 3.1 by an independent validator that uses the
// schemas the initiative publishes (@seriousme/openapi-schema-validator); answers against the document's own schemas by
// ajv; server-sent events as WHATWG HTML section 9.2 has them.

import { createHash } from "node:crypto";
import { request } from "node:http";
import { Validator } from "@seriousme/openapi-schema-validator";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, afterEach, expect, test } from "vitest";
import { crewOf } from "../../src/cli/batch/crew.ts";
import { type DoorWish, openDoor } from "../../src/cli/serve/door.ts";
import { type JobLimits, Jobs } from "../../src/cli/serve/jobs.ts";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";
import { runCli } from "../tools/runCli.ts";

const open: (() => Promise<void>)[] = [];
const closeAll = async (): Promise<void> => {
  for (const close of open.splice(0).reverse()) await close();
};
afterEach(closeAll);
afterAll(closeAll);

const THREAD = new URL("../tools/batchWorkerFromSource.mjs", import.meta.url);

interface Service {
  readonly address: string;
  ask(path: string, init?: RequestInit): Promise<Response>;
  post(wish: object): Promise<Response>;
}

async function service(
  wish: Partial<DoorWish> = {},
  limits: Partial<JobLimits> = {},
  threads = 0,
): Promise<Service> {
  const told: string[] = [];
  // On a thread of its own only where the test ends one: it reads the sources first.
  const crew = await crewOf(threads, THREAD, 1);
  const jobs = new Jobs(crew, { mostMs: 60_000, mostWaiting: 10, mostKept: 10, ...limits }, (error) =>
    told.push(error),
  );
  const usual = { host: "127.0.0.1", port: 0, token: null, version: "1.2.3", mostEffort: 20, mostBytes: 100_000 };
  const door = await openDoor({ ...usual, language: "en", ...wish }, jobs);
  open.push(async () => {
    await door.close();
    await jobs.close();
    expect(told).toEqual([]);
  });
  const address = `http://127.0.0.1:${door.port}`;
  const ask = (path: string, init?: RequestInit) => fetch(address + path, init);
  return {
    address,
    ask,
    post: (wish) =>
      ask("/jobs", {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify(wish),
      }),
  };
}

/** The data of each event until the stream ends. */
async function eventsOf(response: Response): Promise<Record<string, unknown>[]> {
  const blocks = (await response.text()).split("\n\n").filter((block) => block.startsWith("event: job\n"));
  return blocks.map((block) => JSON.parse(block.split("\ndata: ")[1]!));
}

const codes = async (response: Response): Promise<string> => {
  const { problems } = (await response.json()) as { problems: { code: string }[] };
  return `${response.status} ${problems.map(({ code }) => code).join(" ")}`;
};

test("the document is OpenAPI 3.1, and what the service answers is what it says", async () => {
  const { ask, post } = await service();
  const document = (await (await ask("/openapi.json")).json()) as { components: { schemas: object } };
  const { valid, errors } = await new Validator().validate(structuredClone(document));
  expect(errors ?? []).toEqual([]);
  expect(valid).toBe(true);
  const ajv = new Ajv2020({ strict: false });
  ajv.addSchema({ $id: "door", ...document });
  const isA = (name: string, data: unknown): string => {
    const check = ajv.compile({ $ref: `door#/components/schemas/${name}` });
    return check(data) ? "" : `${name}: ${JSON.stringify(check.errors)}`;
  };
  const wish = { project: POUCH_TEMPLATE, effort: 0.01, seed: 1 };
  expect(isA("Wish", wish)).toBe("");
  expect(isA("Wish", { ...wish, effort: 21 })).not.toBe("");
  const taken = await post(wish);
  expect(taken.status).toBe(202);
  const job = (await taken.json()) as { links: { self: string; events: string } };
  expect(taken.headers.get("location")).toBe(job.links.self);
  expect(isA("Job", job)).toBe("");
  const events = await eventsOf(await ask(job.links.events));
  for (const event of events) expect(isA("Job", event)).toBe("");
  expect(events.at(-1)).toMatchObject({ state: "laid", progress: { cloth: 1, cloths: 1, leftOut: 0 } });
  expect(events.length).toBeGreaterThan(1);
  const done = (await (await ask(job.links.self)).json()) as {
    links: { plan: string };
    files: { name: string; href: string; sha256: string }[];
  };
  const plan = await (await ask(done.links.plan)).json();
  expect(isA("Plan", plan)).toBe("");
  // The same contract as on the command line: the checker on its own passes the very file.
  for (const { href, sha256 } of done.files) {
    const bytes = Buffer.from(await (await ask(href)).arrayBuffer());
    expect(createHash("sha256").update(bytes).digest("hex")).toBe(sha256);
  }
  expect(done.files.map(({ name }) => name)).toEqual(expect.arrayContaining(["plan.json", "cut-sheet.pdf"]));
  expect(isA("Health", await (await ask("/health")).json())).toBe("");
  const wrong = await post({ project: { ...POUCH_TEMPLATE, bags: 0, unit: "ell" } });
  const problems = await wrong.clone().json();
  expect(isA("Problems", problems)).toBe("");
  // Both at once, each with its place.
  expect((problems as { problems: { path: string }[] }).problems.map(({ path }) => path).sort()).toEqual([
    "project.bags",
    "project.unit",
  ]);
  expect((await ask(job.links.self, { method: "DELETE" })).status).toBe(204);
  expect(await codes(await ask(job.links.self))).toBe("404 no-job");
});

test("requests that are too large, no JSON, elsewhere, for too much or too many are refused", async () => {
  const { ask, post } = await service({ mostBytes: 20_000 }, { mostWaiting: 0 });
  const body = JSON.stringify({ project: POUCH_TEMPLATE });
  const send = (headers: Record<string, string>, text: string) =>
    ask("/jobs", { method: "POST", headers, body: text });
  const json = { "content-type": "application/json" };
  expect(await codes(await send(json, JSON.stringify({ project: { name: "x".repeat(30_000) } })))).toBe(
    "413 too-large",
  );
  expect(await codes(await send({ "content-type": "text/plain" }, body))).toBe("415 no-json");
  expect(await codes(await send(json, "{"))).toBe("400 no-json");
  expect(await codes(await post({ project: POUCH_TEMPLATE, effort: 21, colour: "navy" }))).toBe(
    "400 number-out-of-range unknown-key",
  );
  expect(await codes(await post({ project: { laywright: 1 } }))).toMatch(/^400 /u);
  expect(await codes(await post({ project: POUCH_TEMPLATE, effort: 0.001 }))).toBe("503 busy");
  expect(await codes(await ask("/"))).toBe("404 not-found");
  expect(await codes(await ask("/jobs/none/files/..%2F..%2Fpackage.json"))).toBe("404 no-file");
});

test("what is wrong with a request is said in the language that it wants, else in the service's", async () => {
  const { ask, post } = await service({ language: "de" });
  const wrong = { project: { ...POUCH_TEMPLATE, bags: 0 }, seed: "one", write: ["pdf"], efort: 1, cut: 3 };
  const sentences = async (wanted: string | null, wish: object): Promise<string[]> => {
    const headers = {
      "content-type": "application/json",
      ...(wanted === null ? {} : { "accept-language": wanted }),
    };
    const answer = await ask("/jobs", { method: "POST", headers, body: JSON.stringify(wish) });
    const { problems } = (await answer.json()) as { problems: { message: string; path: string }[] };
    return problems.map(({ message }) => message).sort();
  };
  const english = await sentences("fr, en;q=0.8, de;q=0.5", wrong);
  expect(english).toHaveLength(4);
  // The same sentences as on the command line: what it is, and what to do.
  expect(english.join("\n")).toMatch(/The key "efort" is not known here. Did you mean "effort"?/u);
  expect(english.join("\n")).toMatch(/write\[0\].*"pdf" is not a choice here/u);
  const german = await sentences("de-AT", wrong);
  expect(german.join("\n")).toContain('Der Schlüssel "efort" ist hier nicht bekannt. Meinen Sie "effort"?');
  for (const wanted of [null, "fr", "en;q=0", "*"]) expect(await sentences(wanted, wrong)).toEqual(german);
  const soundWish = { project: { ...POUCH_TEMPLATE, bags: 0 } };
  const inGerman = await sentences(null, soundWish);
  expect(await sentences("en", soundWish)).not.toEqual(inGerman);
  expect(await sentences("en", { ...soundWish, lang: "de" })).toEqual(inGerman);
  const none = await ask("/jobs/none", { headers: { "accept-language": "en" } });
  expect(await none.json()).toMatchObject({
    problems: [{ message: expect.stringContaining("There is no such job") }],
  });
  expect(none.headers.get("vary")).toContain("accept-language");
  expect(await post({ project: POUCH_TEMPLATE, effort: 0.001 })).toMatchObject({ status: 202 });
});

test("a page of the web that had its own name lead here gets nothing", async () => {
  const { address } = await service();
  const status = await new Promise((resolve, reject) => {
    const headers = { host: "harbour.example" };
    request(`${address}/health`, { headers }, (answer) => resolve(answer.resume().statusCode))
      .on("error", reject)
      .end();
  });
  expect(status).toBe(403);
});

test("with a token nobody gets anything without it", async () => {
  const token = "a token of the harbour";
  const { ask } = await service({ token });
  const withToken = (text: string) => ask("/health", { headers: { authorization: text } });
  expect(await codes(await ask("/health"))).toBe("401 token");
  expect(await codes(await withToken(`Bearer ${token}.`))).toBe("401 token");
  expect((await withToken(`Bearer ${token}`)).status).toBe(200);
});

// Round panels, whose shortest length nobody proves: a search of 20 million takes minutes.
const LONG = {
  project: {
    ...POUCH_TEMPLATE,
    panels: [{ ...POUCH_TEMPLATE.panels[0], count: 40, shape: { kind: "circle", diameter: 90 } }],
  },
  effort: 20,
};

test("a job that takes too long is ended, and its thread is free again", async () => {
  const { ask, post } = await service({}, { mostMs: 1000 }, 1);
  const { links } = (await (await post(LONG)).json()) as { links: { events: string } };
  expect((await eventsOf(await ask(links.events))).at(-1)).toMatchObject({
    state: "failed",
    problems: [expect.stringContaining("Ended after 1 s.")],
  });
  expect(await (await ask("/health")).json()).toMatchObject({ waiting: 0, laying: 0 });
});

test("a job that is cancelled stops at once, waiting or under way; the next is laid", async () => {
  const { ask, post } = await service({}, { mostMs: 240_000 }, 1);
  const jobs: { links: { self: string; events: string } }[] = [];
  for (const wish of [LONG, LONG, { project: POUCH_TEMPLATE, effort: 0.001 }])
    jobs.push((await (await post(wish)).json()) as (typeof jobs)[0]);
  const [laying, waiting, last] = jobs;
  expect(await (await ask(last!.links.self)).json()).toMatchObject({ state: "waiting", ahead: 1 });
  for (const job of [waiting, laying]) expect((await ask(job!.links.self, { method: "DELETE" })).status).toBe(204);
  expect((await eventsOf(await ask(last!.links.events))).at(-1)).toMatchObject({ state: "laid" });
}, 240_000);

test("on another address than this machine's a token is asked for before anything is opened", async () => {
  const refused = await runCli("serve", "--host", "0.0.0.0");
  expect(refused.code).toBe(1);
  expect(refused.err).toContain("--token-file");
  expect((await runCli("serve", "--token-file", "package-lock.none")).code).toBe(1);
  expect((await runCli("serve", "--port", "wide")).code).toBe(2);
});
