import type { CautionTable } from "../../materials/caution.ts";
import type { Draft } from "../oneLanguage.ts";

/** Cautions in French. */
export const cautions: Draft<CautionTable> = {
  "laser-pvc": ({ materials }) =>
    `Ne coupez jamais ${materials.length === 0 ? "de vinyle" : materials.join(", ")} au laser\u00a0: le PVC dégage du chlorure d’hydrogène. Une matière d’enduction ou d’origine inconnue compte comme du PVC tant que son fournisseur n’a pas nommé le polymère.`,
  "laser-fumes": () =>
    "Laser\u00a0: aspirez les fumées et gardez le capot fermé, ayez un extincteur à portée, et ne le laissez jamais marcher seul\u00a0; la notice de son fabricant et les règles locales passent d’abord.",
  "cutting-machine": () =>
    "Machine à couper\u00a0: tenez doigts, cheveux et manches loin de la lame en mouvement, arrêtez-la avant d’y mettre la main, sortez le tapis avant de décoller les pièces, et ne la laissez jamais seule.",
  "rotary-cutter": () =>
    "Cutter rotatif\u00a0: refermez la lame après chaque coupe, changez une lame émoussée, coupez en vous éloignant de vous, gardez les doigts loin du bord de la règle, portez des chaussures.",
  "sharp-blades": () =>
    "Couteaux, alênes et lames à parer\u00a0: gardez-les affûtés, coupez en vous éloignant de vous, l’autre main derrière la lame, sur une planche stable, et couvrez la lame ensuite.",
  "thick-stack": () =>
    "Les fortes épaisseurs tordent et cassent les aiguilles\u00a0: protégez vos yeux, piquez lentement, tournez le volant à la main sur les surépaisseurs et calez le pied avec une chute pliée.",
  "hot-iron": () =>
    "Les fers et les plis qui viennent d’être repassés brûlent\u00a0: appuyez avec un outil ou un chiffon, pas avec les doigts.",
  "iron-melts": () =>
    "Le tissu enduit et le vinyle fondent sous le fer\u00a0: repassez par l’envers à travers un linge, à feu doux, sans vapeur, et essayez d’abord sur une chute.",
  solvents: () =>
    "Solvants, colles contact et finitions de bord\u00a0: fenêtres ouvertes, gants, pots fermés, ni flamme, ni fer, ni chauffage à côté\u00a0; lisez le pot et essayez d’abord sur l’enduction.",
  "webbing-ends": () =>
    "Scellez les bouts coupés d’une sangle synthétique pour qu’ils ne s’effilochent pas\u00a0; la matière fondue brûle la peau.",
  "not-load-rated": () =>
    "Les sangles ne sont pas prévues pour une charge\u00a0: jamais pour lever ou grimper, ni pour retenir des animaux, des enfants ou des personnes.",
  "small-children": () =>
    "Les longues sangles et les cordons sont un risque d’étranglement pour les petits enfants.",
  "tape-gums": () =>
    "L’adhésif double face ordinaire encrasse les aiguilles\u00a0: prenez-en un prévu pour la couture, hors de la ligne de piqûre.",
  "raw-edge-frays": () =>
    "Un bord brut de tissu s’effiloche\u00a0: gardez cela pour le vinyle, le cuir, le liège ou le feutre, ou bordez le bord.",
  "cork-cracks": () => "Ne marquez pas de pli vif dans le liège\u00a0: il casse. Roulez les plis.",
  "slow-hem": () => "Piquez l’ourlet lentement\u00a0: il a une couche de plus que le reste de la sangle.",
  "tube-ends": () =>
    "Cousez un tube étroit environ 7 % plus long que nécessaire et recoupez-le\u00a0: ses bouts souffrent au retournement.",
  "tab-hump": () =>
    "La patte repliée double chaque couche à l’anneau\u00a0: passez la bosse en tournant le volant à la main.",
  "local-rules": () => "Les règles locales et les notices des fabricants d’outils et de matières passent d’abord.",
};
