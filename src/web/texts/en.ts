/** English texts. Functions take facts and give a sentence; `say` widens literals so that other languages fit. */
const say = (text: string): string => text;

const shell = {
  appName: say("Laywright"),
  skip: say("Go to the table"),
  places: { bag: say("Bag"), cloth: say("Cloth"), lay: say("Lay"), table: say("Table") },
  placesLabel: say("Places"),
  projectMenu: (name: string) => `Project ${name}: open, save, start another`,
  undo: (label: string | null) => (label === null ? "Nothing to undo" : `Undo: ${label}`),
  redo: (label: string | null) => (label === null ? "Nothing to redo" : `Redo: ${label}`),
  undoWord: say("Undo"),
  redoWord: say("Redo"),
  units: say("Lengths shown in"),
  look: say("Look and language"),
  close: say("Close"),
  dropHere: say("Let go to open the project file"),
};

const keeping = {
  kept: say("Kept on this device"),
  saving: say("Keeping …"),
  full: say(
    "This device has no room left, so newer changes are not kept. Save the project to a file, then remove an old project.",
  ),
  refused: say("This browser does not keep projects here. Save the project to a file before you close the page."),
  takenOver: say(
    "This project was changed in another window, and this window follows it. Undo brings your last state back.",
  ),
  splitOff: say(
    "This project was changed in two windows at once. This window goes on in a copy of its own; both are kept.",
  ),
  tryAgain: say("Try again"),
  saveFile: say("Save to a file"),
  understood: say("Understood"),
};

const project = {
  heading: say("Projects"),
  current: say("open now"),
  savedAt: (when: string) => `last change ${when}`,
  open: (name: string) => `Open ${name}`,
  remove: (name: string) => `Remove ${name}`,
  removeSure: (name: string) => `Remove ${name} from this device? Nothing else keeps it.`,
  removeYes: say("Remove it"),
  removeNo: say("Keep it"),
  startEmpty: say("Start with an empty table"),
  startDemo: say("Look round in the example"),
  openFile: say("Open a file"),
  saveFile: say("Save to a file"),
  savedFile: (name: string) => `Saved ${name}.`,
  name: say("Name of the project"),
  unreadable: (file: string) => `${file} could not be opened. Your open project is as it was.`,
  changes: { started: say("started"), opened: (file: string) => `opened ${file}`, demo: say("example") },
};

const look = {
  heading: say("Look and language"),
  theme: say("Light or dark"),
  themes: { auto: say("as the system says"), light: say("light"), dark: say("dark") },
  language: say("Language"),
  units: say("Lengths shown in"),
};

const lay = {
  plan: (material: string) => `Lay plan for ${material}`,
  zoomIn: say("Closer"),
  zoomOut: say("Further away"),
  zoomAll: say("All of it"),
  pieces: say("Pieces on the cloth"),
};

/** The catalogue. */
export const en = { shell, keeping, project, look, lay };
