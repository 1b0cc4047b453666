/** A stretch of sound on its way from a source to the analysis; its own file, so that the audio thread can share the type. */

/** What crosses from whoever brings sound to the analysis worker; `samples.buffer` is transferred. */
export interface SoundBlock {
  /** Float32Array [n], one channel, full scale = 1. */
  readonly samples: Float32Array<ArrayBuffer>;
  /** Index of the first sample since the source began; a gap to the block before shows as a jump. */
  readonly firstFrame: number;
}
