/// <reference lib="webworker" />
// What a worker beside the search runs. One file for both kinds, which share nearly all their code; a worker's name
// says which it is.
import { serveShop } from "../shop/serveShop.ts";
import { serveWeighing } from "../weigh/serveWeighing.ts";

if (self.name === "shop") serveShop();
else serveWeighing();
