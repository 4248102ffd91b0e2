const DAY_MS = 86_400_000;

/** A phone's clock on the wall, set by whoever tells the story; it never goes back, and past midnight it goes on. */
export class WallClock {
  readonly zone: number;
  readonly #firstMidnight: number;
  #sinceMidnight = 0;

  /** `date` is that of the first midnight in the phone's zone, `'2026-11-19'`; `zone` in minutes east of UTC. */
  constructor(date: string, zone: number) {
    this.zone = zone;
    this.#firstMidnight = Date.parse(`${date}T00:00:00Z`) - zone * 60_000;
  }

  /** UTC ms of what the clock shows. */
  get atMs(): number {
    return this.#firstMidnight + this.#sinceMidnight;
  }

  /**
   * Sets the clock to `'17:42'`, `'17:42:10'` or `'17:42:10.240'`. More than half a day back means tomorrow; anything
   * else that goes back is a slip of the author's, and throws.
   */
  set(shown: string): void {
    const parts = /^(\d\d):(\d\d)(?::(\d\d)(?:\.(\d{3}))?)?$/.exec(shown);
    if (!parts) throw new Error(`Not a time of day: ${shown}`);
    const [hours = 0, minutes = 0, seconds = 0, ms = 0] = parts.slice(1).map((part) => Number(part ?? 0));
    const today = Math.floor(this.#sinceMidnight / DAY_MS) * DAY_MS;
    let next = today + ((hours * 60 + minutes) * 60 + seconds) * 1000 + ms;
    if (next < this.#sinceMidnight - DAY_MS / 2) next += DAY_MS;
    if (next < this.#sinceMidnight) throw new Error(`The clock cannot go back to ${shown}`);
    this.#sinceMidnight = next;
  }

  /** Lets time pass. */
  pass(ms: number): void {
    this.#sinceMidnight += ms;
  }
}
