import type { LengthStyle } from "../../core/units/formatLength.ts";
import { LANGUAGE_NAMES, LANGUAGES, type Language } from "../../core/words/words.ts";
import { ChoiceBlank } from "../fields/blanks.tsx";
import { Dialog } from "../parts/Dialog.tsx";
import type { Settings } from "../state/settings.ts";
import { useStore } from "../state/store.ts";
import { useChange, useProject, useWorkbench, withUnits } from "../state/workbench.ts";
import { useTexts } from "../texts/texts.ts";

/** Units, language, light or dark. */
export function LookDialog({ onClose }: { onClose: () => void }) {
  const { settings } = useWorkbench();
  const texts = useTexts();
  const change = useChange();
  const { output } = useProject();
  const { theme, language } = useStore(settings, (now) => now);
  const set = (part: Partial<Settings>) => settings.update((now) => ({ ...now, ...part }));
  return (
    <Dialog heading={texts.look.heading} onClose={onClose}>
      <ChoiceBlank<LengthStyle>
        labelled
        label={texts.look.units}
        path="output.lengths"
        value={output.lengths}
        options={[
          ["mm", texts.look.styles.mm],
          ["cm", texts.look.styles.cm],
          ["in/16", texts.look.styles.sixteenths],
          ["in/32", texts.look.styles.thirtySeconds],
        ]}
        onValue={(style) => change((project) => withUnits(project, style), texts.look.changedUnits)}
      />
      <ChoiceBlank<Settings["theme"]>
        labelled
        label={texts.look.theme}
        path="look.theme"
        value={theme}
        options={[
          ["auto", texts.look.themes.auto],
          ["light", texts.look.themes.light],
          ["dark", texts.look.themes.dark],
        ]}
        onValue={(next) => set({ theme: next })}
      />
      <ChoiceBlank<Language>
        labelled
        label={texts.look.language}
        path="look.language"
        value={language}
        options={LANGUAGES.map((id) => [id, LANGUAGE_NAMES[id]] as const)}
        onValue={(next) => set({ language: next })}
      />
    </Dialog>
  );
}
