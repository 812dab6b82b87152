import { pluralOf } from "../../../core/units/numberWords.ts";
import { type Blank, words } from "../words.tsx";

const plural = pluralOf("en");
const say = (text: string): string => text;

/** What to buy of a cloth, by width and by how straps are made, and how cloth and money grow with the bags. */
export const enShop = {
  heading: say("What to buy"),
  about: say(
    "Every width a shop has, and other ways to make the straps. Each row is a whole plan that was checked.",
  ),
  look: say("Compare widths and ways"),
  lookAgain: say("Compare again"),
  stop: say("That is enough"),
  progress: (found: number, all: number) => `${found} of ${all} rows`,
  stopped: (found: number, all: number) => `Stopped after ${found} of ${all} rows.`,
  failed: say("This could not be worked out. That is a fault in the program."),
  outdated: say("The project has changed since: compare again."),
  prices: say("What each width costs"),
  pricesAbout: (basis: string) =>
    `For ${basis}. A width without a price of its own costs what the cloth costs; shops ask more for wide cloth.`,
  priceOf: (width: string) => `Price of the cloth ${width} wide`,
  asCloth: say("as the cloth"),
  way: say("Width and straps"),
  buy: say("Buy"),
  toPay: say("To pay"),
  bags: say("Bags a metre"),
  asPlanned: say("as planned"),
  alsoCrosswise: say("also with the straps cut crosswise"),
  alsoJoined: say("also with the straps joined where that saves cloth"),
  crosswise: say("crosswise"),
  joined: say("joined"),
  used: (share: string) => `${share} used`,
  bulk: (layers: number, thickness: string) =>
    `straps ${layers} ${plural(layers, "layer", "layers")}, ${thickness}`,
  best: say("best"),
  nothing: say("nothing"),
  bestIs: (way: string, length: string, money: string | null, rows: number) =>
    money === null
      ? `Best: ${way}: ${length}, the least cloth of ${rows} ways. No price is given.`
      : `Best: ${way}: ${length} for ${money}, the least money of ${rows} ways.`,
  saved: (money: string) => `That is ${money} less than as planned.`,
  alike: (rows: number) =>
    `${rows} more ${plural(rows, "way costs", "ways cost")} the same; this one has thinner straps or takes less cloth.`,
  growHeading: say("One bag more"),
  growAbout: (bags: Blank) =>
    words("What 1 to ", bags, " bags take off a new roll, as the cloth and the straps are planned."),
  growBags: say("Most bags to look at"),
  grow: say("Lay them out"),
  growing: (bags: number) => `Laying out 1 to ${bags} bags`,
  makes: (steps: readonly { readonly length: string; readonly bags: number }[]) =>
    `${steps.map(({ length, bags }) => `${length} makes ${bags}`).join(", ")}.`,
  free: (bags: readonly number[]) =>
    bags.length === 1 ? `Bag ${bags[0]} costs no cloth.` : `Bags ${bags.join(", ")} cost no cloth.`,
  curve: say("Bags against the length of cloth that is bought"),
  curveBags: say("bags"),
  curveLength: say("length to buy"),
  opened: {
    looking: say("Other rolls and panels are still being weighed."),
    others: (count: number) => `What ${count} other ${plural(count, "way", "ways")} would cost`,
  },
  piece: {
    heading: say("What can I make from this piece?"),
    about: (along: Blank, across: Blank) =>
      words("I have a piece ", along, " along the grain and ", across, " across."),
    along: say("Length of the piece along the grain"),
    across: say("Width of the piece across"),
    take: (name: string) => `Take ${name}`,
    look: say("Look what it makes"),
    looking: say("Laying it out"),
    bags: (bags: number) =>
      bags === 0 ? "No whole bag comes out of it." : `It makes ${bags} ${plural(bags, "bag", "bags")}.`,
    alone: (name: string, count: number) =>
      count === 0 ? `Not one of “${name}” comes out of it.` : `Nothing but “${name}”: ${count}.`,
    besides: (name: string, count: number, bags: number) =>
      count === 0
        ? `Beside the ${plural(bags, "bag", "bags")} there is no room for one more of “${name}”.`
        : `Beside the ${plural(bags, "bag", "bags")}: ${count} more of “${name}”.`,
    notProven: say("Every number was laid out and checked; a longer search may find room for one more."),
    plan: say("Its plan"),
  },
  list: {
    link: say("Shopping list"),
    about: say(
      "Everything this project needs, shop by shop, rounded up to what is sold. What you have of a cloth is used up first.",
    ),
    what: say("What"),
    amount: say("How much"),
    cost: say("Price"),
    noPrice: say("no price"),
    savePdf: say("Save to print"),
    saveText: say("Save as text"),
    saveCsv: say("Save for a spreadsheet"),
    waiting: say("The list follows as soon as every cloth has a plan."),
  },
};
