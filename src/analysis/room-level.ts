/** Level of the room between the plucks, followed from moment to moment; a mark on the level line, nothing is computed from it. */

/** Long enough to hold a pluck and the quiet after it, short enough to follow a fan that is switched on. */
const MEMORY_S = 6;

/** The room is what is heard in the quieter part of the time. */
const QUIET_SHARE = 0.2;

/** Before this the level would be a guess. */
const KNOWN_AFTER_S = 0.5;

export class RoomLevel {
  readonly #levelsDbfs: number[] = [];
  readonly #momentS: number;

  /** @param momentS  time between two levels, s */
  constructor(momentS: number) {
    this.#momentS = momentS;
  }

  /** Takes the level of one moment, dBFS; gives the room's, dBFS, once it is known. */
  follow(levelDbfs: number): number | undefined {
    this.#levelsDbfs.push(levelDbfs);
    if (this.#levelsDbfs.length * this.#momentS > MEMORY_S) this.#levelsDbfs.shift();
    if (this.#levelsDbfs.length * this.#momentS < KNOWN_AFTER_S) return undefined;
    const ascending = this.#levelsDbfs.toSorted((a, b) => a - b);
    return ascending[Math.floor(QUIET_SHARE * ascending.length)];
  }
}
