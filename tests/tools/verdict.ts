// What a run of all tests comes to: every test has to have run, and there have to be some.

/** What vitest's JSON report says, as far as it is read here. */
interface Report {
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly assertionResults: readonly {
      readonly status: string;
      readonly fullName: string;
      /** What failed; on a test that passed, what its first try failed at. */
      readonly failureMessages?: readonly string[];
    }[];
  }[];
}

/** Tests that may pass on a second try only: a browser starved of the processor for a moment, not a page that is wrong now and then. */
const MOST_AGAIN = 3;

/**
 * Lines to print and the exit code. A test that is skipped, left as a todo or not reached fails the run: nobody reads
 * a list of skipped tests. Only who asks for tests by name leaves the others out on purpose.
 */
export function verdictOf(
  code: number | null,
  report: Report | null,
  asked: readonly string[] = [],
): { readonly lines: readonly string[]; readonly status: number } {
  const results = report?.testResults ?? [];
  const tests = results.flatMap(({ assertionResults }) => assertionResults);
  const passed = tests.filter(({ status }) => status === "passed").length;
  const unread = results.filter((file) => file.status === "failed" && file.assertionResults.length === 0).length;
  const failed = tests.filter(({ status }) => status === "failed").length + unread;
  const byName = asked.some((word) => /^(?:-t|--testNamePattern)/u.test(word));
  const idle = byName ? [] : tests.filter(({ status }) => status !== "passed" && status !== "failed");
  const lines = idle.map(({ fullName }) => `Not run: ${fullName}`);
  if (idle.length > 0) lines.push(`${idle.length} tests did not run. Every test runs, or it is taken out.`);
  const again = tests.filter(
    ({ status, failureMessages = [] }) => status === "passed" && failureMessages.length > 0,
  );
  for (const { fullName, failureMessages } of again)
    lines.push(`Passed on the second try only: ${fullName} (first: ${failureMessages![0]!.split("\n", 1)[0]})`);
  if (again.length > MOST_AGAIN)
    lines.push(`${again.length} tests passed on the second try only; at most ${MOST_AGAIN} may.`);
  if (passed === 0) lines.push("No test passed: the run itself is broken.");
  lines.push(`${passed} passed, ${failed} failed`);
  const isGood = code === 0 && passed > 0 && failed === 0 && idle.length === 0 && again.length <= MOST_AGAIN;
  return { lines, status: isGood ? 0 : code || 1 };
}
