import { LANGUAGES, type Language, READ_LANGUAGES } from "../../core/words/words.ts";
import { createStore, type Store } from "./store.ts";

/** What this window looks like; kept on the device, not in the project. */
export interface Settings {
  readonly language: Language;
  readonly theme: "auto" | "light" | "dark";
  /** The project that was open last. */
  readonly projectId: string | null;
}

const PLACE = "laywright";

/** The settings of this device, written back whenever they change; without storage they last as long as the page. */
export function openSettings(): Store<Settings> {
  const store = createStore(readSettings());
  store.subscribe(() => {
    try {
      localStorage.setItem(PLACE, JSON.stringify(store.get()));
    } catch {
      // No storage: the settings last as long as the page is open.
    }
  });
  return store;
}

function readSettings(): Settings {
  const fresh: Settings = {
    // A draft is switched on by hand alone.
    language: READ_LANGUAGES.find((known) => navigator.language.startsWith(known)) ?? "en",
    theme: "auto",
    projectId: null,
  };
  try {
    const kept = JSON.parse(localStorage.getItem(PLACE) ?? "{}") as Partial<Record<keyof Settings, unknown>>;
    return {
      language: LANGUAGES.find((known) => known === kept.language) ?? fresh.language,
      theme: kept.theme === "light" || kept.theme === "dark" ? kept.theme : "auto",
      projectId: typeof kept.projectId === "string" ? kept.projectId : null,
    };
  } catch {
    return fresh;
  }
}

/** Puts the language and the theme on the page and follows the system where the theme is left to it. */
export function wearSettings(settings: Store<Settings>): void {
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const wear = () => {
    const { theme, language } = settings.get();
    const isDark = theme === "dark" || (theme === "auto" && dark.matches);
    document.documentElement.dataset["theme"] = isDark ? "dark" : "light";
    document.documentElement.lang = language;
  };
  dark.addEventListener("change", wear);
  settings.subscribe(wear);
  wear();
}
