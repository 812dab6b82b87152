// The changes that `npm run mutate` makes to a source, and a source with all of them in it at once, each behind a
// switch: the tests are loaded once and run again and again with another switch on.
import ts from "typescript";

/** A change of one place. */
export interface Mutant {
  readonly file: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** The expression that holds the change, and what stands there with it. */
  readonly within: { readonly start: number; readonly end: number; readonly text: string };
  /** Why it is not tried: no input can come there by the source's own word. */
  readonly passedOver: "throws-internal" | null;
}

const SWAPS: Readonly<Record<string, string>> = {
  "<": "<=",
  "<=": "<",
  ">": ">=",
  ">=": ">",
  "===": "!==",
  "!==": "===",
  "&&": "||",
  "||": "&&",
  "+": "-",
  "-": "+",
  "*": "/",
  "/": "*",
  "+=": "-=",
  "-=": "+=",
};

/** Every change of a source: operators swapped, conditions turned over, numbers moved by one, what is left out. */
export function mutantsOf(file: string, code: string): Mutant[] {
  const source = ts.createSourceFile(file, code, ts.ScriptTarget.Latest, true);
  const found: Mutant[] = [];
  const put = (node: ts.Node, text: string, whole: ts.Node = node, instead?: string, never = false): void => {
    const [start, end, from, to] = [node.getStart(source), node.getEnd(), whole.getStart(source), whole.getEnd()];
    const within = { start: from, end: to, text: instead ?? code.slice(from, start) + text + code.slice(end, to) };
    found.push({ file, start, end, text, within, passedOver: never ? "throws-internal" : null });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node)) return;
    // What our own mistakes say when they are thrown is read by nobody.
    if (ts.isThrowStatement(node)) return;
    if (ts.isBinaryExpression(node)) {
      const swap = SWAPS[node.operatorToken.getText(source)];
      const isText = [node.left, node.right].some(
        (side) => ts.isStringLiteralLike(side) || ts.isTemplateExpression(side),
      );
      if (swap !== undefined && !isText) put(node.operatorToken, swap, node);
    }
    if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.ExclamationToken)
      put(node, node.operand.getText(source));
    if (ts.isIfStatement(node)) {
      put(node.expression, "true");
      // People's mistakes are values, ours throw: a condition that guards a throw is never met.
      put(node.expression, "false", node.expression, "false", throwsOnly(node.thenStatement));
    }
    const isKey = node.parent !== undefined && ts.isPropertyAssignment(node.parent) && node.parent.name === node;
    if (ts.isNumericLiteral(node) && !isKey) put(node, String(Number(node.text) + 1));
    if (node.kind === ts.SyntaxKind.TrueKeyword) put(node, "false");
    if (node.kind === ts.SyntaxKind.FalseKeyword) put(node, "true");
    if (ts.isExpressionStatement(node) && ts.isCallExpression(node.expression))
      put(node, ";", node.expression, "void 0");
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function throwsOnly(node: ts.Statement): boolean {
  const only = ts.isBlock(node) && node.statements.length === 1 ? node.statements[0]! : node;
  return ts.isThrowStatement(only);
}

/** A file with a mutant's change in it. */
export function changed(code: string, { start, end, text }: Pick<Mutant, "start" | "end" | "text">): string {
  return code.slice(0, start) + text + code.slice(end);
}

/** A stretch of a source that is put in brackets: with the changes of it, or as the value of a module's own name. */
interface Span {
  readonly start: number;
  readonly end: number;
  readonly changes: [number, Mutant][];
  readonly name: string | null;
}

/**
 * A source with every change in it: `__change(n)` tells whether the n-th of `mutants` is on, and that its place was
 * reached; every loop says at each round that it goes on (`__round()`), so that one without end is found by counting.
 * What a module names while it loads, functions apart, can be worked out again (`__kept`) once a switch is thrown.
 */
export function withSwitches(code: string, mutants: ReadonlyMap<number, Mutant>): string {
  const source = ts.createSourceFile("source.ts", code, ts.ScriptTarget.Latest, true);
  const values = keptValues(source);
  const marks = [...roundMarks(source), ...values.map(({ at }) => ({ at, text: "let", instead: "const".length }))];
  marks.sort((a, b) => a.at - b.at);
  let mark = 0;
  const plain = (from: number, to: number): string => {
    let out = "";
    let at = from;
    for (; mark < marks.length && marks[mark]!.at <= to; mark++) {
      out += code.slice(at, marks[mark]!.at) + marks[mark]!.text;
      at = marks[mark]!.at + marks[mark]!.instead;
    }
    return out + code.slice(at, to);
  };
  const spans = new Map<string, Span>();
  for (const { start, end, name } of values) spans.set(`${start} ${end}`, { start, end, changes: [], name });
  for (const entry of mutants) {
    const { start, end } = entry[1].within;
    const span = spans.get(`${start} ${end}`) ?? { start, end, changes: [], name: null };
    span.changes.push(entry);
    spans.set(`${start} ${end}`, span);
  }
  // Outer before inner where both begin at one place.
  const sorted = [...spans.values()].sort((a, b) => a.start - b.start || b.end - a.end);
  let next = 0;
  const emit = (from: number, to: number): string => {
    let out = "";
    let at = from;
    while (next < sorted.length && sorted[next]!.start < to) {
      const { start, end, changes, name } = sorted[next++]!;
      const before = plain(at, start);
      const switches = changes.map(([n, { within }]) => `__change(${n}) ? (${within.text}) : `).join("");
      const value = `(${switches}(${emit(start, end)}))`;
      out += before + (name === null ? value : `__kept(() => ${value}, (value) => { ${name} = value; })`);
      at = end;
    }
    return out + plain(at, to);
  };
  return emit(0, code.length);
}

/** What a module gives names to while it loads: where `const` stands, and the value. Functions are no values here. */
function keptValues(source: ts.SourceFile): { at: number; start: number; end: number; name: string }[] {
  return source.statements.flatMap((statement) => {
    if (!ts.isVariableStatement(statement) || !(statement.declarationList.flags & ts.NodeFlags.Const)) return [];
    const { declarations } = statement.declarationList;
    const [{ name, initializer } = { name: undefined, initializer: undefined }] = declarations;
    if (declarations.length !== 1 || !name || !ts.isIdentifier(name) || !initializer) return [];
    if (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer)) return [];
    const [at, start, end] = [
      statement.declarationList.getStart(source),
      initializer.getStart(source),
      initializer.getEnd(),
    ];
    return [{ at, start, end, name: name.text }];
  });
}

/** What is put into a source so that its loops count their rounds, in order of place. */
function roundMarks(source: ts.SourceFile): { at: number; text: string; instead: number }[] {
  const marks: { at: number; text: string; instead: number }[] = [];
  const put = (at: number, text: string): number => marks.push({ at, text, instead: 0 });
  const visit = (node: ts.Node): void => {
    if (ts.isIterationStatement(node, false)) {
      const body = node.statement;
      if (ts.isBlock(body)) put(body.getStart(source) + 1, "__round();");
      else {
        put(body.getStart(source), "{__round();");
        put(body.getEnd(), "}");
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return marks;
}

/** Sources and tests that a test brings in, types left out, with the number of steps to each. */
export function reachOf(test: string, importsOf: (file: string) => readonly string[]): Map<string, number> {
  const steps = new Map([[test, 0]]);
  for (const [file, step] of steps)
    for (const one of importsOf(file)) if (!steps.has(one)) steps.set(one, step + 1);
  return steps;
}

/** What a module brings in by name, types left out, as it is written. */
export function importedBy(code: string): string[] {
  const source = ts.createSourceFile("imports.ts", code, ts.ScriptTarget.Latest);
  return source.statements.flatMap((node) => {
    const isType =
      (ts.isImportDeclaration(node) && node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword) ||
      (ts.isExportDeclaration(node) && node.isTypeOnly);
    const from = ts.isImportDeclaration(node) || ts.isExportDeclaration(node) ? node.moduleSpecifier : undefined;
    return from && !isType && ts.isStringLiteral(from) ? [from.text] : [];
  });
}
