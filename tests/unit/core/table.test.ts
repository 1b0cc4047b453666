import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellNumber, readTable, type Table, type TableFault, writeTable } from '../../../src/core/table.ts';

const table = (text: string): Table => {
  const read = readTable(text);
  if (read.kind !== 'table') throw new Error(`${read.why} at ${read.row}, ${read.column}`);
  return read;
};
const fault = (text: string): TableFault => {
  const read = readTable(text);
  if (read.kind !== 'table-fault') throw new Error('was read');
  return read;
};
const rowsOf = (text: string) => table(text).rows.map(({ cells }) => Object.fromEntries(cells));

describe('readTable', () => {
  it.each([
    ['comma', 'file,span_mm\na.wav,150\nb.wav,\n'],
    ['semicolon', 'file;span_mm\na.wav;150\nb.wav;\n'],
    ['CR LF', 'file,span_mm\r\na.wav,150\r\nb.wav,\r\n'],
    ['CR', 'file,span_mm\ra.wav,150\rb.wav,\r'],
    ['no last line end', 'file,span_mm\na.wav,150\nb.wav,'],
    ['byte order mark', '\ufefffile,span_mm\na.wav,150\nb.wav,\n'],
    ['quotes and spaces', '"file" , "span_mm"\n"a.wav", 150 \n b.wav ,\n'],
    ['separator line', 'sep=;\r\nfile;span_mm\r\na.wav;150\r\nb.wav;\r\n'],
    ['blank and empty lines', '\nfile,span_mm,\n\na.wav,150,\n,,\nb.wav\n\n'],
  ])('%s', (_, text) => {
    expect(table(text).columns).toEqual(['file', 'span_mm']);
    expect(rowsOf(text)).toEqual([{ file: 'a.wav', span_mm: '150' }, { file: 'b.wav' }]);
    expect(table(text).rows.map(({ number }) => number)).toEqual([1, 2]);
  });

  it('keeps separators, quotes and line ends inside quotes', () => {
    expect(rowsOf('file,note\n"a, b;""c"".wav","two\r\nlines"\n')).toEqual([{ file: 'a, b;"c".wav', note: 'two\r\nlines' }]);
    expect(rowsOf('file;note\n"a;b.wav";5.9" wide\n')).toEqual([{ file: 'a;b.wav', note: '5.9" wide' }]);
  });

  it('takes a header of one column', () => {
    expect(rowsOf('file\na.wav\n')).toEqual([{ file: 'a.wav' }]);
    expect(fault('file\na,b.wav\n')).toMatchObject({ why: 'too-many-cells', row: 1, column: '2' });
  });

  it.each([
    ['', 'empty', 0, '1'],
    ['\ufeff\n\n', 'empty', 0, '1'],
    ['file,,span_mm\n', 'column-without-name', 0, '2'],
    ['file,file\n', 'column-twice', 0, 'file'],
    ['file,note\na,b\nc,"d\n', 'unclosed-quote', 2, 'note'],
    ['file,note\n"a"b,c\n', 'text-after-quote', 1, 'file'],
    ['file,note\na,b\n\nc,d,e\n', 'too-many-cells', 2, '3'],
    ['"file,note\na,b\n', 'unclosed-quote', 0, '1'],
  ])('%j: %s', (text, why, row, column) => {
    expect(fault(text)).toEqual({ kind: 'table-fault', why, row, column });
  });

  it('reads a long table in one pass', () => {
    const long = `file,span_mm\n${'a.wav,150\n'.repeat(100_000)}`;
    expect(table(long).rows).toHaveLength(100_000);
    expect(fault(`file\n"${'""'.repeat(200_000)}`).why).toBe('unclosed-quote');
  });
});

describe('cellNumber', () => {
  it('reads the decimal comma where the semicolon separates', () => {
    expect(cellNumber('7,812', ';')).toEqual({ kind: 'decimal', value: 7.812 });
    expect(cellNumber('7.812', ';')).toEqual({ kind: 'decimal', value: 7.812 });
    expect(cellNumber('7,8', ',')).toEqual({ kind: 'decimal', value: 7.8 });
    expect(cellNumber('7,812', ',')).toEqual({ kind: 'no-decimal', why: 'ambiguous' });
    expect(cellNumber('150 mm', ';')).toEqual({ kind: 'no-decimal', why: 'not-a-number' });
  });
});

describe('writeTable', () => {
  it('writes numbers plainly and quotes what needs it', () => {
    const text = writeTable({
      columns: ['file', 'force_n'],
      rows: [
        ['a, "b".wav', 9.7],
        ['c.wav', undefined],
      ],
    });
    expect(text).toBe('file,force_n\r\n"a, ""b"".wav",9.7\r\nc.wav,\r\n');
    expect(writeTable({ columns: ['a', 'b'], rows: [[-9.7, 1]], separator: ';' })).toBe('a;b\r\n-9,7;1\r\n');
  });

  // Common practice against formula injection: a cell that begins with one of these is run by spreadsheets; no single source.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', "'=1", '＝1', '=cmd|x'])('disarms %j', (text) => {
    const written = writeTable({ columns: ['note'], rows: [[text]] });
    expect(written.split('\r\n')[1]!.replace(/^"/u, '')).toMatch(/^'/u);
    expect(rowsOf(written)).toEqual([{ note: text }]);
  });

  it('is read back as it was, whatever the cells hold', () => {
    const text = fc.string({ unit: 'grapheme' }).filter((cell) => cell.trim() !== '');
    const armed = fc.constantFrom("'=", "''@x", '"', '""', ';', ',', '\r\n', ' a ', "'a", '-', 'sep=;');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.oneof(text, armed), fc.oneof(text, armed)), { minLength: 1 }),
        fc.constantFrom(',', ';'),
        (cells, separator) => {
          const written = writeTable({ columns: ['one', 'two'], rows: cells, separator: separator as ',' | ';' });
          expect(rowsOf(written)).toEqual(cells.map(([one, two]) => ({ one, two })));
        },
      ),
    );
  });

  it('writes numbers that are read back exactly', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.constantFrom<',' | ';'>(',', ';'), (value, separator) => {
        const [row] = table(writeTable({ columns: ['n', 'm'], rows: [[value, 1]], separator })).rows;
        expect(cellNumber(row!.cells.get('n')!, separator)).toEqual({ kind: 'decimal', value: value + 0 });
        const [alone] = table(writeTable({ columns: ['n'], rows: [[value]], separator })).rows;
        expect(Number(alone!.cells.get('n'))).toBe(value + 0);
      }),
    );
  });
});
