import { createHash, timingSafeEqual } from "node:crypto";
import { readFileSync } from "node:fs";
import { serve } from "@hono/node-server";
import { type Context, Hono } from "hono";
import { accepts } from "hono/accepts";
import { bodyLimit } from "hono/body-limit";
import { streamSSE } from "hono/streaming";
import { readJob } from "../../core/job/projectJob.ts";
import { problemLine } from "../../core/problems/describeProblem.ts";
import type { Problem as HouseProblem } from "../../core/problems/problem.ts";
import { problemsOfIssues } from "../../core/project/file/issues.ts";
import { type Language, READ_LANGUAGES, SENTENCES } from "../../core/words/words.ts";
import type { LayTask } from "../batch/layTask.ts";
import { SERVE_TEXTS, type ServeTexts } from "../words/serveTexts.ts";
import { openApi, wishSchema } from "./contract.ts";
import { FOLDER, type Jobs } from "./jobs.ts";

/** What the service needs to know. */
export interface DoorWish {
  readonly host: string;
  /** 0 for any that is free. */
  readonly port: number;
  readonly token: string | null;
  readonly version: string;
  /** Millions of evaluations a cloth. */
  readonly mostEffort: number;
  readonly mostBytes: number;
  readonly language: Language;
}

/** The service, open. */
export interface OpenDoor {
  readonly port: number;
  close(): Promise<void>;
}

type Problem = { readonly code: string; readonly path: string; readonly message: string };
type Status = 400 | 401 | 403 | 404 | 413 | 415 | 503;

const told = (c: Context, status: Status, problems: readonly Problem[]): Response => c.json({ problems }, status);

const say = (c: Context, status: Status, code: string, message: string, path = ""): Response =>
  told(c, status, [{ code, path, message }]);

/** Opens the service: jobs as resources, over HTTP. Resolves once it listens; rejects where it cannot. */
export async function openDoor(wish: DoorWish, jobs: Jobs): Promise<OpenDoor> {
  const app = appOf(wish, jobs);
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: app.fetch, hostname: wish.host, port: wish.port }, ({ port }) => {
      resolve({
        port,
        close: () =>
          new Promise((closed) => {
            server.close(() => closed());
            if ("closeAllConnections" in server) server.closeAllConnections();
          }),
      });
    });
    // A client that sends its request drop by drop holds nothing for long.
    if ("requestTimeout" in server) server.requestTimeout = 30_000;
    // Longer than clients keep a line: who closes it first must not be the one that does not ask.
    if ("keepAliveTimeout" in server) server.keepAliveTimeout = 65_000;
    server.once("error", reject);
  });
}

function appOf({ token, version, mostEffort, mostBytes, language, host }: DoorWish, jobs: Jobs): Hono {
  const app = new Hono();
  /** What is said to whoever asks, in the language that the request wants. */
  const textsFor = (c: Context): ServeTexts => SERVE_TEXTS[languageOf(c, language)];
  const document = openApi(version, mostEffort, token !== null);
  const schema = wishSchema(mostEffort);
  app.use(async (c, next) => {
    const texts = textsFor(c);
    c.header("vary", "accept-language");
    // A page of the web that had its name lead to this machine would not know the name it has here.
    if (token === null && !isNameOfHere(c.req.header("host") ?? "", host))
      return say(c, 403, "host", texts.wrongHost);
    if (token !== null && !isToken(c.req.header("authorization"), token))
      return say(c, 401, "token", texts.noToken);
    await next();
    return;
  });
  app.onError((error, c) => {
    // A body that ends too soon, or a bug of ours: neither takes the service down.
    const message = `${textsFor(c).ourFault} ${error.message}`;
    return c.json({ problems: [{ code: "fault", path: "", message }] }, 500);
  });
  app.notFound((c) => say(c, 404, "not-found", textsFor(c).nothingHere, c.req.path));
  app.get("/health", (c) => c.json({ laywright: version, waiting: jobs.waiting, laying: jobs.laying }));
  app.get("/openapi.json", (c) => c.json(document));
  const limit = bodyLimit({
    maxSize: mostBytes,
    onError: (c) => say(c, 413, "too-large", textsFor(c).tooLarge(mostBytes / 1_000_000)),
  });
  app.post("/jobs", limit, async (c) => {
    const texts = textsFor(c);
    // Only a program of its own may say so; a page elsewhere would have to ask first, and gets no answer.
    if (!/^application\/json\b/iu.test(c.req.header("content-type") ?? ""))
      return say(c, 415, "no-json", texts.noJson);
    const read = taskOf(await c.req.text(), schema, languageOf(c, language));
    if ("problems" in read) return told(c, 400, read.problems);
    const job = jobs.add(read.task);
    if (job === null) {
      c.header("retry-after", "10");
      return say(c, 503, "busy", texts.busy);
    }
    c.header("location", job.links.self);
    return c.json(job, 202);
  });
  app.get("/jobs/:id", (c) => {
    const job = jobs.get(c.req.param("id"));
    return job === null ? say(c, 404, "no-job", textsFor(c).noJob, c.req.path) : c.json(job);
  });
  app.delete("/jobs/:id", (c) =>
    jobs.cancel(c.req.param("id")) ? c.body(null, 204) : say(c, 404, "no-job", textsFor(c).noJob, c.req.path),
  );
  app.get("/jobs/:id/events", (c) => {
    const id = c.req.param("id");
    if (jobs.get(id) === null) return say(c, 404, "no-job", textsFor(c).noJob, c.req.path);
    return eventsOf(c, jobs, id);
  });
  app.get("/jobs/:id/plan", (c) => fileOf(c, jobs, "plan.json", textsFor(c)));
  app.get("/jobs/:id/files/:name", (c) => fileOf(c, jobs, c.req.param("name"), textsFor(c)));
  return app;
}

/** The job as an event, at once and at every change, until it has ended. */
function eventsOf(c: Context, jobs: Jobs, id: string): Response {
  return streamSSE(c, async (stream) => {
    let wake: () => void = () => {};
    const unlisten = jobs.listen(id, () => wake());
    stream.onAbort(() => {
      unlisten();
      wake();
    });
    let sent = "";
    while (!stream.aborted) {
      const changed = new Promise<void>((resolve) => {
        wake = resolve;
        // A line that says nothing for long is cut by what lies between.
        setTimeout(resolve, 15_000).unref();
      });
      const job = jobs.get(id);
      const data = JSON.stringify(job);
      if (job !== null && data !== sent) await stream.writeSSE({ event: "job", data });
      else await stream.write(": still there\n\n");
      sent = data;
      if (job === null || !["waiting", "laying"].includes(job.state)) break;
      await changed;
    }
    unlisten();
  });
}

const KINDS: Readonly<Record<string, string>> = {
  json: "application/json",
  pdf: "application/pdf",
  svg: "image/svg+xml",
  dxf: "image/vnd.dxf",
  csv: "text/csv; charset=utf-8",
  txt: "text/plain; charset=utf-8",
};

function fileOf(c: Context, jobs: Jobs, name: string, texts: ServeTexts): Response {
  const path = jobs.fileOf(c.req.param("id") ?? "", name);
  if (path === null) return say(c, 404, "no-file", texts.noFile, c.req.path);
  const kind = KINDS[name.split(".").at(-1)!] ?? "application/octet-stream";
  return c.body(readFileSync(path), 200, { "content-type": kind, "x-content-type-options": "nosniff" });
}

function taskOf(
  body: string,
  schema: ReturnType<typeof wishSchema>,
  language: Language,
): { readonly task: LayTask } | { readonly problems: readonly Problem[] } {
  let data: unknown;
  try {
    data = JSON.parse(body);
  } catch {
    return { problems: [{ code: "no-json", path: "", message: SERVE_TEXTS[language].noJson }] };
  }
  const read = schema.safeParse(data);
  if (!read.success) return { problems: toldIn(language, problemsOfIssues(read.error.issues, data)) };
  const { project, effort, seed, cut, write, lang } = read.data;
  const text = JSON.stringify(project);
  const job = readJob(text, lang);
  if (!job.ok) {
    // The language of the job, where it is said, is that of its maker.
    const told = toldIn(isGroup(data) && "lang" in data ? lang : language, job.problems);
    return { problems: told.map((problem) => ({ ...problem, path: `project.${problem.path}` })) };
  }
  return {
    task: {
      folder: FOLDER,
      orders: [{ name: job.value.project.name, folder: FOLDER, text }],
      withheld: {},
      effort: { evaluations: effort * 1_000_000, seed, mode: cut },
      language: lang,
      write,
    },
  };
}

function toldIn(language: Language, problems: readonly HouseProblem[]): Problem[] {
  return problems.map((problem) => ({
    code: problem.code,
    path: problem.path,
    message: problemLine(problem, SENTENCES[language]),
  }));
}

function isGroup(data: unknown): data is object {
  return typeof data === "object" && data !== null;
}

/**
 * The language that a request wants most of those there are, else `usual`. Source: RFC 9110 section 12.5.4, a wished
 * `de-AT` met by `de` as the lookup of RFC 4647 section 3.4 has it.
 */
function languageOf(c: Context, usual: Language): Language {
  const known = (wished: string): Language | undefined =>
    READ_LANGUAGES.find((language) => language === wished.split("-")[0]!.toLowerCase());
  const wanted = accepts(c, {
    header: "Accept-Language",
    supports: [...READ_LANGUAGES],
    default: usual,
    match: (wishes) => {
      const wished = wishes.filter(({ q }) => q > 0).sort((a, b) => b.q - a.q);
      return wished.map(({ type }) => known(type)).find((language) => language !== undefined) ?? usual;
    },
  });
  return known(wanted) ?? usual;
}

/** Whether a request was sent to this machine by a name of its own. */
function isNameOfHere(header: string, host: string): boolean {
  const name = header.replace(/:\d+$/u, "").toLowerCase();
  return ["localhost", "127.0.0.1", "[::1]", host.toLowerCase()].includes(name);
}

/** Compared by digests, so that the time it takes tells nothing. */
function isToken(header: string | undefined, token: string): boolean {
  const digest = (text: string) => createHash("sha256").update(text).digest();
  return timingSafeEqual(digest(header ?? ""), digest(`Bearer ${token}`));
}
