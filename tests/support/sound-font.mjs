/** Reads a SoundFont 2 file as far as a cutter of samples needs it: which sample an instrument plays, and how it is tuned. */
// SoundFont Technical Specification 2.04, 1996: chunks in section 4, `pdta` records in section 7, generators in section 8.1.2.

const GENERATOR = { instrument: 41, coarseTune: 51, fineTune: 52, sampleId: 53, overridingRootKey: 58 };
const RIGHT_CHANNEL = 2;
const MIDDLE_C = 60;

/** Every chunk of the three lists, by its id. */
function chunksOf(view) {
  const chunks = new Map();
  const idAt = (at) => String.fromCharCode(...[0, 1, 2, 3].map((k) => view.getUint8(at + k)));
  for (let list = 12; list < view.byteLength; list += 8 + view.getUint32(list + 4, true)) {
    const end = list + 8 + view.getUint32(list + 4, true);
    for (let at = list + 12; at < end; ) {
      const size = view.getUint32(at + 4, true);
      chunks.set(idAt(at), { start: at + 8, size });
      at += 8 + size + (size % 2);
    }
  }
  return chunks;
}

function records({ start, size }, recordBytes, read) {
  return Array.from({ length: size / recordBytes }, (_, index) => read(start + index * recordBytes));
}

/** Generators of each zone from record `first` to before `end`, the global zone (one without its last generator) laid under the others. */
function zones(bags, generators, { first, end, last }) {
  let common = new Map();
  const found = [];
  for (let bag = first; bag < end; bag++) {
    const own = new Map(generators.slice(bags[bag], bags[bag + 1]).map(({ operator, amount }) => [operator, amount]));
    if (own.has(last)) found.push(new Map([...common, ...own]));
    else if (bag === first) common = own;
  }
  return found;
}

/**
 * Samples that one program plays, in the order of the file, each once; of stereo pairs the left side.
 *
 * @param bytes            the whole file
 * @param which            bank and program, both counted from 0
 * @returns for each sample: its name, the key at which it plays at its own rate, the cents by which the player then raises it,
 *   `frequencyHz` that it was recorded at, sampleRateHz, and samples, an Int16Array
 */
export function soundFontSamples(bytes, { bank, program }) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks = chunksOf(view);
  const nameAt = (at) =>
    String.fromCharCode(...bytes.subarray(at, at + 20))
      .split('\0')[0]
      .trim();
  const bagsOf = (id) => records(chunks.get(id), 4, (at) => view.getUint16(at, true));
  const generatorsOf = (id) =>
    records(chunks.get(id), 4, (at) => ({ operator: view.getUint16(at, true), amount: view.getInt16(at + 2, true) }));
  const presets = records(chunks.get('phdr'), 38, (at) => ({
    program: view.getUint16(at + 20, true),
    bank: view.getUint16(at + 22, true),
    firstBag: view.getUint16(at + 24, true),
  }));
  const instruments = records(chunks.get('inst'), 22, (at) => ({ firstBag: view.getUint16(at + 20, true) }));
  const headers = records(chunks.get('shdr'), 46, (at) => ({
    name: nameAt(at),
    start: view.getUint32(at + 20, true),
    end: view.getUint32(at + 24, true),
    sampleRateHz: view.getUint32(at + 36, true),
    rootKey: view.getUint8(at + 40),
    correctionCents: view.getInt8(at + 41),
    channel: view.getUint16(at + 44, true),
  }));
  const [presetBags, presetGenerators] = [bagsOf('pbag'), generatorsOf('pgen')];
  const [instrumentBags, instrumentGenerators] = [bagsOf('ibag'), generatorsOf('igen')];

  const samples = new Map();
  const preset = presets.findIndex((record) => record.bank === bank && record.program === program);
  if (preset < 0) throw new RangeError(`no program ${program} in bank ${bank}`);
  const layers = { first: presets[preset].firstBag, end: presets[preset + 1].firstBag, last: GENERATOR.instrument };
  for (const layer of zones(presetBags, presetGenerators, layers)) {
    const instrument = layer.get(GENERATOR.instrument) & 0xffff;
    const splits = { first: instruments[instrument].firstBag, end: instruments[instrument + 1].firstBag, last: GENERATOR.sampleId };
    for (const split of zones(instrumentBags, instrumentGenerators, splits)) {
      const header = headers[split.get(GENERATOR.sampleId) & 0xffff];
      if (samples.has(header) || header.channel === RIGHT_CHANNEL) continue;
      const start = chunks.get('smpl').start + 2 * header.start;
      const tuning = tuningOf(header, split);
      samples.set(header, {
        name: header.name,
        ...tuning,
        sampleRateHz: header.sampleRateHz,
        samples: Int16Array.from({ length: header.end - header.start }, (_, index) => view.getInt16(start + 2 * index, true)),
      });
    }
  }
  return [...samples.values()];
}

/**
 * A player that is asked for the root key leaves the rate as it is but for the tuning, and the key's own frequency is what comes out:
 * so the recording sounds at that frequency less the tuning.
 */
function tuningOf(header, split) {
  const overriding = split.get(GENERATOR.overridingRootKey) ?? -1;
  const own = header.rootKey <= 127 ? header.rootKey : MIDDLE_C; // 255: no pitch told
  const rootKey = overriding < 0 ? own : overriding;
  const cents = 100 * (split.get(GENERATOR.coarseTune) ?? 0) + (split.get(GENERATOR.fineTune) ?? 0) + header.correctionCents;
  return { rootKey, tuningCents: cents, frequencyHz: 440 * 2 ** ((rootKey - 69) / 12 - cents / 1200) };
}
