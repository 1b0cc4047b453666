/** The head of a FLAC stream (RFC 9639, section 8.2): its STREAMINFO block comes first and is 34 bytes long. */

const STREAMINFO_END = 4 + 4 + 34;

/** @param bytes from `fLaC` on; empty where they end too early */
export function flacHeader(bytes: Uint8Array): { readonly sampleRateHz?: number; readonly durationS?: number } {
  if (bytes.length < STREAMINFO_END) return {};
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const sampleRateHz = view.getUint32(18) >>> 12; // 20 bits, then 3 of channels, 5 of sample size, 36 of total samples
  const totalSamples = (view.getUint8(21) & 0x0f) * 2 ** 32 + view.getUint32(22);
  if (sampleRateHz === 0) return {};
  return totalSamples === 0 ? { sampleRateHz } : { sampleRateHz, durationS: totalSamples / sampleRateHz };
}
