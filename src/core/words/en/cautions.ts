import type { CautionTable } from "../../materials/caution.ts";

/** Cautions in English. */
export const cautions: CautionTable = {
  "laser-pvc": ({ materials }) =>
    `Never cut ${materials.length === 0 ? "vinyl" : materials.join(", ")} with a laser: PVC gives off hydrogen chloride. What is of unknown coating or make counts as PVC until its supplier names the polymer.`,
  "laser-fumes": () =>
    "Laser: draw the fumes off and keep the lid shut, keep a fire extinguisher within reach, and never leave it alone while it runs; its maker's manual and local rules come first.",
  "cutting-machine": () =>
    "Cutting machine: keep fingers, hair and sleeves off the moving blade, stop it before you reach in, take the mat out before you lift the pieces, and never leave it alone.",
  "rotary-cutter": () =>
    "Rotary cutter: close the blade after every cut, change a blunt blade, cut away from yourself, keep fingers off the ruler's edge, wear shoes.",
  "sharp-blades": () =>
    "Knives, awls and skiving blades: keep them sharp, cut away from yourself with the other hand behind the blade, on a firm board, and cover the blade afterwards.",
  "thick-stack": () =>
    "Thick stacks bend and break needles: protect your eyes, sew slowly, turn the wheel by hand over humps and keep the foot level with a folded shim.",
  "hot-iron": () => "Irons and freshly pressed folds burn: press with a tool or a cloth, not with the fingers.",
  "iron-melts": () =>
    "Coated cloth and vinyl melt under an iron: press from the back through a cloth, low heat, no steam, and try a scrap first.",
  solvents: () =>
    "Solvents, contact cements and edge finishes: open windows, gloves, closed tins, no flame, iron or heater near; read the tin and test on the coating first.",
  "webbing-ends": () => "Seal cut ends of synthetic webbing so that they do not fray; molten webbing burns skin.",
  "not-load-rated": () =>
    "Straps are not load rated: never use them for lifting or climbing, or to hold animals, children or people.",
  "small-children": () => "Long straps and cords are a strangulation risk for small children.",
  "tape-gums": () => "Ordinary double-sided tape gums needles: use a kind meant for sewing, off the stitch line.",
  "raw-edge-frays": () =>
    "A raw edge of woven cloth frays: use this for vinyl, leather, cork or felt, or bind the edge.",
  "cork-cracks": () => "Do not crease cork sharply: it cracks. Roll the folds.",
  "slow-hem": () => "Stitch the hem slowly: it is one layer more than the rest of the strap.",
  "tube-ends": () => "Sew a narrow tube some 7 % longer than needed and trim it: the ends suffer in turning.",
  "tab-hump": () => "The folded tab doubles every layer at the ring: turn the wheel by hand over the hump.",
  "local-rules": () => "Local rules and the makers' own instructions for tools and materials come first.",
};
