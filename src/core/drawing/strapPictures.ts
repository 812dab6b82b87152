import { CONSTRUCTIONS } from "../straps/constructions/catalogue.ts";
import type { StrapResult } from "../straps/strapResult.ts";
import type { Drawing } from "./drawing.ts";
import { foldPicture } from "./foldPicture.ts";
import { stripPicture } from "./stripPicture.ts";

/** A picture with the words that go below it and a stem for its file. */
export interface StrapPicture {
  readonly stem: string;
  readonly caption: string;
  readonly drawing: Drawing;
}

/** Everything there is to see of a strap: its section, and each different strip laid flat with its lines. */
export function strapPictures(result: StrapResult): readonly StrapPicture[] {
  const title = CONSTRUCTIONS[result.wish.construction].title;
  const drawn = result.pieces.filter((piece) => piece.lines.length > 0);
  return [
    { stem: "section", caption: title, drawing: foldPicture(result, title) },
    ...drawn.map((piece) => ({
      stem: `strip-${piece.id.replace(`${result.wish.id}-`, "")}`,
      caption:
        piece.name === result.wish.name
          ? "laid flat"
          : `${piece.name.replace(`${result.wish.name}, `, "")}, laid flat`,
      drawing: stripPicture(piece),
    })),
  ];
}
