import { createHash } from "node:crypto";
import type { Plugin } from "vite";

/**
 * What a page may load and run (Content Security Policy Level 3, W3C): only what `own` names, nothing from anywhere
 * else, no script or style put in later, no `eval`.
 */
function policy(own: Readonly<Record<"script" | "style" | "font" | "connect" | "worker", string>>): string {
  const rules = [
    "default-src 'none'",
    ...Object.entries(own).map(([kind, from]) => `${kind}-src ${from}`),
    // Photographs that a person gives, and the pictures that are kept of them.
    "img-src 'self' data: blob:",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ];
  return rules.join("; ");
}

/** For the page as a server gives it: all of it from there. */
export const SERVED_POLICY = policy({
  script: "'self'",
  style: "'self'",
  font: "'self'",
  connect: "'self'",
  worker: "'self'",
});

/** For the page in one file: its own scripts and styles by their hashes, workers and fonts out of itself. */
export function oneFilePolicy(scripts: readonly string[], styles: readonly string[]): string {
  return policy({
    script: hashes(scripts),
    style: hashes(styles),
    font: "data:",
    connect: "data:",
    worker: "blob:",
  });
}

function hashes(texts: readonly string[]): string {
  return texts.map((text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`).join(" ");
}

/** A page's head with the policy before everything that it rules. */
export function withPolicy(html: string, content: string): string {
  const meta = `<meta http-equiv="Content-Security-Policy" content="${content}" />`;
  if (!html.includes('<meta charset="utf-8" />')) throw new Error("withPolicy: the page states no charset");
  return html.replace('<meta charset="utf-8" />', (charset) => `${charset}\n    ${meta}`);
}

/** Writes the policy into the page that a server gives. */
export function servedPolicy(): Plugin {
  return {
    name: "content-policy",
    apply: "build",
    transformIndexHtml: { order: "post", handler: (html) => withPolicy(html, SERVED_POLICY) },
  };
}
