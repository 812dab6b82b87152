// The layers of the house: a folder imports itself and what stands before it in this list.
const LAYERS = [
  "units",
  "problems",
  "geometry",
  "materials",
  "straps",
  "panels",
  "project",
  "lay",
  "buying",
  "drawing",
];
const layerRules = LAYERS.slice(0, -1).map((name, i) => ({
  name: `layer-${name}`,
  severity: "error",
  from: { path: `^src/core/${name}/` },
  to: { path: `^src/core/(${LAYERS.slice(i + 1).join("|")})/` },
}));
const only = (library, folder) => ({
  name: `only-${folder.replaceAll("/", "-")}-uses-${library}`,
  comment: "Each library lives behind one folder.",
  severity: "error",
  from: { path: "^src/", pathNot: `^src/${folder}/` },
  to: { path: `node_modules/${library}/` },
});
module.exports = {
  forbidden: [
    ...layerRules,
    {
      name: "core-is-pure",
      severity: "error",
      from: { path: "^src/core/" },
      to: { path: "^src/(export|worker|cli|web)/" },
    },
    { name: "core-no-node", severity: "error", from: { path: "^src/core/" }, to: { dependencyTypes: ["core"] } },
    {
      name: "export-reads-drawing",
      severity: "error",
      from: { path: "^src/export/" },
      to: { path: "^src/(worker|cli|web)/" },
    },
    {
      name: "export-adapters-apart",
      severity: "error",
      from: { path: "^src/export/([^/]+)/" },
      to: { path: "^src/export/([^/]+)/", pathNot: "^src/export/($1|fonts)/" },
    },
    {
      name: "worker-below-hosts",
      severity: "error",
      from: { path: "^src/worker/" },
      to: { path: "^src/(cli|web|export)/" },
    },
    {
      name: "hosts-apart",
      severity: "error",
      from: { path: "^src/(cli|web)/" },
      to: { path: "^src/(cli|web)/", pathNot: "^src/$1/" },
    },
    { name: "no-circular", severity: "error", from: {}, to: { circular: true } },
    only("zod", "core/project"),
    only("clipper-lib", "core/geometry"),
    only("pdf-lib", "export/pdf"),
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
