/** A proven lower bound on the end of any plan, units, that rises while a search runs. */
export interface BoundHolder {
  value: number;
}
