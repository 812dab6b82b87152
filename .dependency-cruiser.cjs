// The layers of the house: a folder imports itself and what stands before it in this list.
const LAYERS = [
  "units",
  "problems",
  "geometry",
  "materials",
  "straps",
  "panels",
  "patterns",
  "project",
  "bags",
  "lay",
  "buying",
  "job",
  "cupboard",
  "batch",
  "drawing",
];
// Inside the lay, likewise; the checker stands apart (see below).
const LAY_LAYERS = ["problem", "search", "bounds", "boxes", "outlines", "engines", "alternatives"];
const BOX_LAYERS = ["cuts", "rectangles", "straps", "ruler", "matched"];
const OUTLINE_LAYERS = [
  "compile",
  "noFit",
  "layout",
  "bounds",
  "judge",
  "starts",
  "closeUp",
  "search",
  "rows",
  "fillUp",
];
// What is said stands low, since everything speaks; of what it speaks about it may know the shapes only.
const WORDS = {
  name: "words-know-shapes-only",
  comment: "Sentences read facts by their types; they run nothing of the rooms above them.",
  severity: "error",
  from: { path: "^src/core/words/" },
  to: { path: "^src/core/(?!units/|words/)", dependencyTypesNot: ["type-only"] },
};
const layersOf = (folder, names) =>
  names.slice(0, -1).map((name, i) => ({
    name: `layer-${folder.replace("src/core", "").replaceAll("/", "-").slice(1)}${folder === "src/core" ? "" : "-"}${name}`,
    severity: "error",
    from: { path: `^${folder}/${name}/` },
    to: { path: `^${folder}/(${names.slice(i + 1).join("|")})/` },
  }));
const only = (library, ...folders) => ({
  name: `only-${folders.join("-and-").replaceAll("/", "-")}-uses-${library}`,
  comment: "Each library lives behind one folder; what checks files, behind one for each kind of file.",
  severity: "error",
  from: { path: "^src/", pathNot: `^src/(${folders.join("|")})/` },
  // By its bare name too: some packages are laid out in a way that is not resolved here.
  to: { path: `(node_modules/${library}/|^${library}(/|$))` },
});
module.exports = {
  forbidden: [
    WORDS,
    ...layersOf("src/core", LAYERS),
    ...layersOf("src/core/lay", LAY_LAYERS),
    ...layersOf("src/core/lay/boxes", BOX_LAYERS),
    ...layersOf("src/core/lay/outlines", OUTLINE_LAYERS),
    {
      name: "lay-folders-without-circles",
      comment: "Two folders of the lay that need each other are one folder, or their common part is a third.",
      severity: "error",
      scope: "folder",
      from: { path: "^src/core/lay/" },
      to: { circular: true },
    },
    {
      name: "lay-checker-stands-apart",
      comment: "It judges plans, so it shares no code with what makes them, nor with the geometry they use.",
      severity: "error",
      from: { path: "^src/core/lay/check/" },
      to: { path: "^src/core/(geometry|lay/(?!check/))", dependencyTypesNot: ["type-only"] },
    },
    {
      name: "lay-search-does-not-ask-the-checker",
      comment: "Whoever hands a plan out has it checked; a search that asked would be judging itself.",
      severity: "error",
      from: { path: "^src/core/lay/", pathNot: "^src/core/lay/check/" },
      to: { path: "^src/core/lay/check/" },
    },
    {
      name: "core-is-pure",
      severity: "error",
      from: { path: "^src/core/" },
      to: { path: "^src/(export|reading|worker|cli|web)/" },
    },
    { name: "core-no-node", severity: "error", from: { path: "^src/core/" }, to: { dependencyTypes: ["core"] } },
    {
      name: "export-reads-drawing",
      severity: "error",
      from: { path: "^src/export/" },
      to: { path: "^src/(reading|worker|cli|web)/" },
    },
    {
      name: "export-adapters-apart",
      severity: "error",
      from: { path: "^src/export/([^/]+)/" },
      to: { path: "^src/export/([^/]+)/", pathNot: "^src/export/($1|fonts)/" },
    },
    {
      name: "reading-below-hosts",
      severity: "error",
      from: { path: "^src/reading/" },
      to: { path: "^src/(worker|cli|web|export)/" },
    },
    {
      name: "readers-apart",
      severity: "error",
      from: { path: "^src/reading/([^/]+)/" },
      to: { path: "^src/reading/([^/]+)/", pathNot: "^src/reading/$1/" },
    },
    {
      name: "worker-below-hosts",
      severity: "error",
      from: { path: "^src/worker/" },
      to: { path: "^src/(cli|web|export|reading)/" },
    },
    {
      name: "hosts-apart",
      severity: "error",
      from: { path: "^src/(cli|web)/" },
      to: { path: "^src/(cli|web)/", pathNot: "^src/$1/" },
    },
    { name: "no-circular", severity: "error", from: {}, to: { circular: true } },
    only("zod", "core/project", "core/job/planDocument", "core/cupboard", "cli/queue", "cli/serve"),
    only("bullmq", "cli/queue"),
    only("ioredis", "cli/queue"),
    only("hono", "cli/serve"),
    only("@hono/node-server", "cli/serve"),
    only("jsonc-parser", "core/project"),
    only("clipper-lib", "core/geometry"),
    only("pdf-lib", "export/pdf"),
    only("fflate", "export/pdf"),
    only("uqr", "export/cutsheet"),
    only("csv-parse", "cli/batch"),
    only("tinypool", "cli/batch"),
    only("saxes", "reading/svg"),
    only("pdfjs-dist", "reading/pdf"),
    only("fast-png", "reading/image"),
    only("jpeg-js", "reading/image"),
    only("@svgdotjs", "web"),
    only("preact", "web"),
    only("idb", "web"),
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    exclude: { path: "\\.test\\.ts$" },
  },
};
