import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createConnection, createServer, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { connect } from "node:tls";
import { isInstalled } from "./systemPrograms.ts";

/** A Redis of our own on the loopback address. */
export interface RedisServer {
  readonly url: string;
  readonly port: number;
  /** Where it keeps what it is told. */
  readonly folder: string;
  /** Kills it with no time to tidy up. */
  kill(): Promise<void>;
  /** Starts it again on the same port with what it had kept. */
  start(): Promise<void>;
  /** Ends it and takes its files away. */
  close(): Promise<void>;
}

/** A store that answers on an encrypted line alone, to whoever has the password. */
export interface EncryptedLine {
  /** Paths of a certificate and its key, in PEM. */
  readonly certificate: string;
  readonly key: string;
  readonly password: string;
}

/**
 * Starts a real `redis-server` that keeps every change on the disk before it answers. Throws where the program is missing: a check that
 * is left out would look like one that passed.
 */
export async function redisServer(line?: EncryptedLine): Promise<RedisServer> {
  if (!isInstalled("redis-server"))
    throw new Error("redis-server is missing. Install it and run again: apt-get install redis-server");
  const port = await freePort();
  const folder = mkdtempSync(join(tmpdir(), "laywright-redis-"));
  let child: ChildProcess | null = null;
  const kept = ["--dir", folder, "--appendonly", "yes", "--appendfsync", "always", "--save", ""];
  const lines = line === undefined ? ["--port", String(port)] : encrypted(port, line);
  const server: RedisServer = {
    url: line === undefined ? `redis://127.0.0.1:${port}` : `rediss://:${line.password}@127.0.0.1:${port}`,
    port,
    folder,
    async start() {
      child = spawn("redis-server", [...lines, "--bind", "127.0.0.1", ...kept], { stdio: "ignore" });
      while (!(await answers(port, line))) await new Promise((resolve) => setTimeout(resolve, 30));
    },
    async kill() {
      const exit = once(child!, "exit");
      child!.kill("SIGKILL");
      await exit;
    },
    async close() {
      if (child?.exitCode === null && child.signalCode === null) await server.kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
  await server.start();
  return server;
}

async function freePort(): Promise<number> {
  const server = createServer();
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address() as { port: number };
  server.close();
  await once(server, "close");
  return port;
}

function encrypted(port: number, { certificate, key, password }: EncryptedLine): string[] {
  const files = ["--tls-cert-file", certificate, "--tls-key-file", key, "--tls-ca-cert-file", certificate];
  const line = ["--port", "0", "--tls-port", String(port), "--tls-auth-clients", "no"];
  return [...line, ...files, "--requirepass", password];
}

function answers(port: number, line: EncryptedLine | undefined): Promise<boolean> {
  return new Promise((resolve) => {
    const ask = (): void => {
      socket.write(line === undefined ? "PING\r\n" : `AUTH ${line.password}\r\nPING\r\n`);
    };
    const socket =
      line === undefined
        ? createConnection(port, "127.0.0.1", ask)
        : connect({ port, host: "127.0.0.1", ca: readFileSync(line.certificate) }, ask);
    const end = (does: boolean): void => {
      socket.destroy();
      resolve(does);
    };
    socket.once("data", (data) => end(/^\+(?:PONG|OK)/u.test(data.toString())));
    socket.once("error", () => end(false));
  });
}

/** A line to a port that can be cut and mended. */
export interface CutLine {
  readonly port: number;
  /** Ends all connections; new ones are closed at once. */
  cut(): void;
  mend(): void;
  close(): Promise<void>;
}

/** Passes on what comes to a port of its own to `target`, both ways; `heard` gets every stretch of bytes on the way. */
export async function cutLine(target: number, heard: (bytes: Buffer) => void = () => {}): Promise<CutLine> {
  const sockets = new Set<Socket>();
  let isCut = false;
  const server = createServer((near) => {
    if (isCut) {
      near.destroy();
      return;
    }
    const far = createConnection(target, "127.0.0.1");
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      sockets.add(one);
      one.on("data", heard);
      one.pipe(other);
      one.on("error", () => {});
      one.on("close", () => {
        sockets.delete(one);
        other.destroy();
      });
    }
  });
  server.listen(0, "127.0.0.1");
  await once(server, "listening");
  const cut = (): void => {
    isCut = true;
    for (const socket of sockets) socket.destroy();
  };
  return {
    port: (server.address() as { port: number }).port,
    cut,
    mend: () => {
      isCut = false;
    },
    async close() {
      cut();
      server.close();
      await once(server, "close");
    },
  };
}
