/** Files of a ZIP archive by its central directory, stored ones only: a reader that shares nothing with the writer. */

export function unzipped(archive: Buffer): ReadonlyMap<string, Buffer> {
  const end = archive.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]));
  if (end < 0) throw new Error('no end of a directory');
  const count = archive.readUInt16LE(end + 10);
  let at = archive.readUInt32LE(end + 16);
  const files = new Map<string, Buffer>();
  for (let index = 0; index < count; index++) {
    if (archive.readUInt32LE(at) !== 0x02014b50) throw new Error(`no entry at ${at}`);
    if (archive.readUInt16LE(at + 10) !== 0) throw new Error('not stored as it is');
    const [bytes, nameBytes, extraBytes, noteBytes] = [at + 20, at + 28, at + 30, at + 32].map((place, field) =>
      field === 0 ? archive.readUInt32LE(place) : archive.readUInt16LE(place),
    ) as [number, number, number, number];
    const local = archive.readUInt32LE(at + 42);
    const name = archive.subarray(at + 46, at + 46 + nameBytes).toString('utf8');
    const from = local + 30 + archive.readUInt16LE(local + 26) + archive.readUInt16LE(local + 28);
    files.set(name, archive.subarray(from, from + bytes));
    at += 46 + nameBytes + extraBytes + noteBytes;
  }
  return files;
}
