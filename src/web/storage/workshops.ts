/** Workshop files that were opened on this device, by file name: projects that name one take from it. */
const PLACE = "laywright-workshops";

function all(): Readonly<Record<string, string>> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(PLACE) ?? "{}");
    if (typeof kept !== "object" || kept === null) return {};
    return Object.fromEntries(
      Object.entries(kept).filter((entry): entry is [string, string] => typeof entry[1] === "string"),
    );
  } catch {
    return {};
  }
}

/** The text of a workshop by its file name, whatever folder a project names it in; null when none is kept. */
export function keptWorkshop(name: string): string | null {
  return all()[name.split("/").at(-1) ?? ""] ?? null;
}

/** Keeps a workshop; one of the same name is replaced. Without storage it is forgotten with the page. */
export function keepWorkshop(name: string, text: string): void {
  try {
    localStorage.setItem(PLACE, JSON.stringify({ ...all(), [name]: text }));
  } catch {
    // No storage, or no room.
  }
}
