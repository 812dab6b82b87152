import type { DrawnStrap } from "../../straps/build/strapResult.ts";
import type { StrapWords } from "../../words/strapWords.ts";
import { constructionTitle } from "../../words/strapWords.ts";
import { STRAP_WORDS } from "../../words/words.ts";
import type { Drawing } from "../list/drawing.ts";
import { foldPicture } from "./foldPicture.ts";
import { stripPicture } from "./stripPicture.ts";
import { threadingPicture } from "./threadingPicture.ts";

/** A picture with the words that go below it and a stem for its file. */
export interface StrapPicture {
  readonly stem: string;
  readonly caption: string;
  readonly drawing: Drawing;
}

/** Width between the margins of an A4 sheet, mm. */
const A4_ROOM = 180;

/**
 * Everything there is to see of a strap: its section, each different strip laid flat with its lines, and how it is
 * threaded where it has a slider. They are
 * drawn to be shown as large as they are, at most `room` mm wide where that can be, and name their scale. Lengths stand
 * in mm, and in inches besides as `result.inches` says.
 */
export function strapPictures(
  result: DrawnStrap,
  words: StrapWords = STRAP_WORDS.en,
  room: number = A4_ROOM,
): readonly StrapPicture[] {
  const title = constructionTitle(words.constructions[result.wish.construction]);
  const threading = threadingPicture(result, words, room);
  const drawn = result.pieces.filter((piece) => piece.lines.length > 0);
  return [
    { stem: "section", caption: title, drawing: foldPicture(result, title, words, room) },
    ...drawn.map((piece) => ({
      stem: `strip-${piece.id.replace(`${result.wish.id}-`, "")}`,
      caption: words.laidFlat(
        piece.name === result.wish.name ? "" : piece.name.replace(`${result.wish.name}, `, ""),
      ),
      drawing: stripPicture(piece, result, words, room),
    })),
    ...(threading === null
      ? []
      : [{ stem: "threading", caption: words.picture.threading.title, drawing: threading }]),
  ];
}
