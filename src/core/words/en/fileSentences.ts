import type { Expected, FileProblem, JsonFaultReason } from "../../problems/fileProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

const listed = (names: readonly string[]): string => names.slice(0, 12).map(quoted).join(", ");
const meant = (nearest: string | null): string => (nearest === null ? "" : ` Did you mean ${quoted(nearest)}?`);

const bounds = (min: number | null, max: number | null): string =>
  min === null ? `Give at most ${max}.` : max === null ? `Give at least ${min}.` : `Give ${min} to ${max}.`;

const FAULTS: Readonly<Record<JsonFaultReason, string>> = {
  "ended-early": "the text ends before everything is closed",
  "more-after-end": "something follows after the end",
  "value-expected": "a value should stand here",
  "key-expected": "a key in double quotes should stand here",
  "colon-expected": "a colon should follow the key",
  "comma-expected": "a comma or the closing bracket should stand here",
  "comma-too-many": "there is a comma too many before this",
  "bad-number": "this is not a valid JSON number",
  "bad-text": "this text is not closed, or contains a line break or a wrong backslash",
  "too-deep": "brackets are nested too deep",
};

const EXPECTED: Readonly<Record<Expected, string>> = {
  length: 'a length such as "12 cm"',
  "length-or-open": 'a length such as "2.4 m", or "open"',
  share: 'a percentage such as "3 %"',
  count: "a whole number such as 2",
  money: "an amount such as 12.50",
  number: "a number",
  text: "text in double quotes",
  "yes-or-no": "true or false",
  "one-way": 'true, false, "up", "down" or "free"',
  list: "a list in [ ]",
  group: "a group of keys in { }",
  place: 'a place [along, across], such as ["10 cm", "4 cm"]',
  point: "a point [along, across], or [along, across, bow] when the edge after it is an arc",
  paper: 'a paper such as "A4", or a size such as { "width": "13 in", "height": "19 in" }',
  measure: 'a length such as "12 cm", or what it follows, such as { "of": "body", "measure": "along" }',
  edge: 'the number of an edge such as 2, or its name such as "top"',
  size: 'a length such as "25 mm", or a group such as { "cut": "10 cm" }',
};

/** Project files in English. */
export const fileSentences: SentenceTable<FileProblem> = {
  "file-empty": () => ({
    what: "The file is empty.",
    remedy: 'A project starts with { "laywright": 1, "name": … }; copy one from the fixtures to begin.',
  }),
  "workshop-missing": ({ name }) => ({
    what: `The project names the workshop ${quoted(name)}, which is not there.`,
    remedy: "Put that file beside the project, or open it on the page first; or take the name out of the project.",
  }),
  "workshop-material-unknown": ({ id, known }) => ({
    what: `The workshop has no material ${quoted(id)}.`,
    remedy: known.length === 0 ? "It has none at all." : `It has: ${known.join(", ")}.`,
  }),
  "file-not-json": ({ line, column, reason }) => ({
    what: `The file is not valid JSON at line ${line}, column ${column}: ${FAULTS[reason]}.`,
    remedy: "Look there, and just before it, for a missing or extra comma, quote or bracket.",
  }),
  "file-too-large": ({ characters, limit }) => ({
    what: `The file has ${characters} characters; a project has at most ${limit}.`,
    remedy: "Check that this is a project file; split a large batch into several projects.",
  }),
  "file-too-deep": ({ limit }) => ({
    what: `Lists or groups are nested more than ${limit} deep.`,
    remedy: "A project file needs far fewer; check that this is a project file.",
  }),
  "file-newer": ({ version, known }) => ({
    what: `The file is of version ${version}; this program reads up to version ${known}.`,
    remedy: "It was saved by a newer Laywright: update this one, and the file will open.",
  }),
  "file-version-unknown": ({ value, known }) => ({
    what: value === null ? "The file states no version." : `The version of the file is ${value}.`,
    remedy: `A project file says "laywright": ${known} at its top.`,
  }),
  "unknown-key": ({ key, nearest }) => ({
    what: `The key ${quoted(key)} is not known here.`,
    remedy: nearest === null ? "Remove it." : `Did you mean ${quoted(nearest)}? Otherwise remove it.`,
  }),
  "key-missing": ({ key }) => ({ what: `The key ${quoted(key)} is missing.`, remedy: "Add it." }),
  "key-repeated": ({ key }) => ({
    what: `The key ${quoted(key)} stands here twice.`,
    remedy: "Keep one of the two.",
  }),
  "wrong-type": ({ expected, value }) => ({
    what: `${value} cannot stand here.`,
    remedy: `Write ${EXPECTED[expected]}.`,
  }),
  "not-one-of": ({ value, choices, nearest }) => ({
    what: `${value} is not a choice here.${meant(nearest)}`,
    remedy: `Use one of ${listed(choices)}.`,
  }),
  "number-out-of-range": ({ value, min, max }) => ({
    what: `The number ${value} is out of range.`,
    remedy: bounds(min, max),
  }),
  "more-problems": ({ count }) => ({
    what: count === 1 ? "There is 1 more problem." : `There are ${count} more problems.`,
    remedy: "Mend the ones above first; it may be the wrong file.",
  }),
  "text-empty": () => ({ what: "The text is empty.", remedy: "Write a name." }),
  "text-too-long": ({ characters, limit }) => ({
    what: `The text has ${characters} characters.`,
    remedy: `Use at most ${limit}.`,
  }),
  "text-unprintable": ({ value }) => ({
    what: `The text ${value} holds characters that cannot be printed.`,
    remedy: "Type it again without line breaks and control characters.",
  }),
  "list-length": ({ count, least, most }) => ({
    what: `The list has ${count} entries.`,
    remedy: bounds(least, most),
  }),
  "duplicate-id": ({ id, firstPath }) => ({
    what: `The id ${quoted(id)} is used already at ${firstPath}.`,
    remedy: "Give every material, stock, strap and panel an id of its own.",
  }),
  "unknown-material": ({ id, nearest, known }) => ({
    what: `There is no material ${quoted(id)}.${meant(nearest)}`,
    remedy:
      known.length === 0 ? "Add it under materials." : `Add it under materials, or use one of ${listed(known)}.`,
  }),
  "color-unreadable": ({ value }) => ({
    what: `${quoted(value)} is not a colour that can be read here.`,
    remedy: 'Write # and six digits 0 to 9 or a to f, two each for red, green and blue, such as "#1e5ac8".',
  }),
  "layer-name-unusable": ({ value }) => ({
    what: `${quoted(value)} cannot name a layer in every file.`,
    remedy: "Use 1 to 31 letters a to z, digits, hyphens, underscores or $, without blanks.",
  }),
  "layer-is-cut": ({ layer, role }) => ({
    what: `The role ${quoted(role)} would share the layer ${quoted(layer)} with the cuts, and everything on that layer is cut.`,
    remedy: "Give the two different layers.",
  }),
  "laser-has-no-blade": ({ key }) => ({
    what: `A laser has no blade, so ${quoted(key)} has no meaning.`,
    remedy: "Leave it out, or state the tool as knife. What a laser burns away is its kerf.",
  }),
  "knife-takes-no-kerf": ({ kerfMm }, say) => ({
    what: `A kerf of ${say(kerfMm)} does not go with a knife's blade offset or overcut.`,
    remedy: "A knife takes no material away: give it kerf 0, or state the tool as laser.",
  }),
  "grip-eats-bed": ({ gripMm, sideMm }, say) => ({
    what: `Gripped edges of ${say(gripMm)} on both sides leave nothing of a bed of ${say(sideMm)}.`,
    remedy: "Make the gripped edge smaller, or correct the size of the bed.",
  }),
  "paper-too-small": ({ sideMm, marginMm, overlapMm }, say) => ({
    what: `Too little usable area is left on paper ${say(sideMm)} wide with margins of ${say(marginMm)} and an overlap of ${say(overlapMm)}.`,
    remedy: "Take larger paper, a smaller margin or a smaller overlap.",
  }),
  "bias-refused": () => ({
    what: "Pieces are not laid on the bias.",
    remedy:
      'Straps and panels cut on the bias stretch and twist. Use "lengthwise", "crosswise" or "either" straight grain.',
  }),
  "outline-crosses-itself": ({ edges, xMm, yMm }, say) => ({
    what: `The outline crosses or touches itself near (${say(xMm)}, ${say(yMm)}): edges ${edges[0] + 1} and ${edges[1] + 1} meet, counted from the first point.`,
    remedy: "Put the points in order around the shape, once each.",
  }),
  "outline-no-area": ({ points }) => ({
    what: `The outline of ${points} points encloses nothing.`,
    remedy: "Give at least three points that do not lie on one line.",
  }),
  "outline-repeats-point": ({ point, xMm, yMm }, say) => ({
    what: `Point ${point} at (${say(xMm)}, ${say(yMm)}) is the same as the one before it.`,
    remedy: "Leave it out; an outline is closed by itself, so do not repeat the first point at the end.",
  }),
  "selvedges-eat-width": ({ widthMm, selvedgeMm }, say) => ({
    what: `Two selvedges of ${say(selvedgeMm)} leave nothing of a width of ${say(widthMm)}.`,
    remedy: 'Give the full width as "width" and the width of one selvedge as "selvedge".',
  }),
  "layers-not-in-twos": ({ count }) => ({
    what: `${count} layers cannot lie face to face in twos.`,
    remedy: `Give an even number, such as ${count + 1}, or lay them all right side up.`,
  }),
  "flaws-under-layers": () => ({
    what: "A roll with flaws cannot lie in layers: the flaws would be hidden under others.",
    remedy: "Cut the flaws out first and give the roll as the lengths that are left, or fold it lengthwise.",
  }),
  "repeat-without-length": () => ({
    what: "The repeat says neither how far the pattern repeats along the cloth nor how far across.",
    remedy: "Give along, across or both, or leave the repeat out.",
  }),
  "half-drop-one-way": () => ({
    what: "Motifs that are dropped by half repeat both ways, but only one repeat is given.",
    remedy: "Give along and across, or leave halfDrop out.",
  }),
  "tolerance-eats-repeat": ({ toleranceMm, repeatMm }, say) => ({
    what: `A tolerance of ${say(toleranceMm)} is half of a repeat of ${say(repeatMm)} or more: anything would match.`,
    remedy: "Give a smaller tolerance, 1 mm for most cloth.",
  }),
  "radius-too-large": ({ radiusMm, mostMm }, say) => ({
    what: `A corner radius of ${say(radiusMm)} does not fit.`,
    remedy: `Give at most ${say(mostMm)}: half of the shorter side.`,
  }),
  "bow-too-large": ({ bowMm, mostMm }, say) => ({
    what: `A bow of ${say(bowMm)} is more than half a circle.`,
    remedy: `Give at most ${say(mostMm)}, half the distance to the next point, or add a point on the arc.`,
  }),
  "grain-conflict": ({ wish, materialId, rule }) => ({
    what: `A ${wish} piece cannot be cut from ${quoted(materialId)}, which is used ${rule} only.`,
    remedy: `Make the piece ${rule} or "either", or change the material's grain.`,
  }),
  "too-many-pieces": ({ count, most }) => ({
    what: `The project needs ${count} pieces.`,
    remedy: `Lay out at most ${most} at a time: make fewer bags in one project.`,
  }),
};
