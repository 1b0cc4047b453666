/** What the tests use of a library that comes without types. */
declare module 'ml-fft' {
  export const FFT: {
    init(size: number): void;
    /** In place, forward, unscaled. */
    fft(re: number[], im: number[]): void;
  };
}
