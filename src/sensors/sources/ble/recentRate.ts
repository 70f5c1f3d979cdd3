const WINDOW_S = 10;

/** Readings a second of one connection: what was before it, or between two, does not count. */
export class RecentRate {
  #perSecond: { readonly second: number; readings: number }[] = [];

  begin(): void {
    this.#perSecond = [];
  }

  take(arrivalS: number, readings: number): void {
    const second = Math.floor(arrivalS);
    const newest = this.#perSecond.at(-1);
    if (newest?.second === second) newest.readings += readings;
    else this.#perSecond.push({ second, readings });
    if (this.#perSecond.length > 2 * WINDOW_S) this.#perSecond.splice(1, WINDOW_S);
  }

  /** Hz over the last whole seconds; `null` before there is one. */
  at(nowS: number): number | null {
    const [first] = this.#perSecond;
    const until = Math.floor(nowS);
    const seconds = Math.min(WINDOW_S, until - ((first?.second ?? Infinity) + 1));
    if (!(seconds >= 1)) return null;
    const within = this.#perSecond.filter((p) => p.second < until && p.second >= until - seconds);
    return within.reduce((sum, p) => sum + p.readings, 0) / seconds;
  }
}
