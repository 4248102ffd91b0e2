// The package carries no types; this is the part the oracle test uses.
declare module 'smpte-timecode' {
  interface Counted {
    readonly frameCount: number;
    toString(): string;
    add(frames: number): Counted;
  }
  export default function Timecode(
    timecode: number | string,
    frameRate: readonly [number, number],
    dropFrame: boolean,
  ): Counted;
}
