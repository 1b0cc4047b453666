import { describe, expect, it } from 'vitest';
import { belts } from '../../../shared/belts.ts';
import { type BatchTake, batchTakes } from '../../../src/cli/batch.ts';
import { setupTold, type ToldTake } from '../../../src/cli/told.ts';
import { usageFaultText } from '../../../src/words/cli-en.ts';

const takes = (text: string, told: ToldTake = {}): readonly BatchTake[] => {
  const result = batchTakes({ text, path: 'takes.csv', told });
  if ('kind' in result) throw new Error(result.faults.map(usageFaultText).join('\n'));
  return result;
};
const setups = (text: string, told: ToldTake = {}) => takes(text, told).map((take) => setupTold(take.told, belts));
const complaints = (text: string) => {
  const result = batchTakes({ text, path: 'takes.csv', told: {} });
  return 'kind' in result ? result.faults.map(usageFaultText) : [];
};

const ALL = 'file,span_mm,density_g_per_m,stiffness_n_m2,fixity,tolerance_percent,u_span_mm,u_density_g_per_m,u_stiffness_n_m2,u_fixity\n';

describe('batchTakes', () => {
  it('reads every column in SI', () => {
    const [setup] = setups(`${ALL}a.wav,150,8.4,1.2e-4,0.5,10,0.2,0.05,1e-5,0.3\n`);
    expect(setup!.spanLengthM!.value).toBeCloseTo(0.15, 12);
    expect(setup!.spanLengthM!.standardUncertainty).toBeCloseTo(0.0002, 12);
    expect(setup!.belt!.linearDensityKgPerM.value).toBeCloseTo(0.0084, 12);
    expect(setup!.belt!.linearDensityKgPerM.standardUncertainty).toBeCloseTo(0.00005, 12);
    expect(setup!.belt!.bendingStiffnessNm2).toEqual({ kind: 'known', value: { value: 1.2e-4, standardUncertainty: 1e-5 } });
    expect(setup!.ends[0]).toEqual({ kind: 'known', value: { value: 0.5, standardUncertainty: 0.3 } });
    expect(setup!.ends[1]).toEqual(setup!.ends[0]);
    expect(setup!.toleranceRelative).toBeCloseTo(0.1, 12);
  });

  it('takes an empty cell from the command line, else as not known', () => {
    const told: ToldTake = {
      spanLengthM: { value: 0.2, standardUncertainty: 0.001 },
      linearDensityKgPerM: { value: 0.0078 },
      fixity: [{ value: 0 }, { value: 1, standardUncertainty: 0.2 }],
      toleranceRelative: 0.15,
      expectedForceN: { lowN: 5, highN: 40 },
    };
    const [first, second] = setups('file,span_mm,u_fixity\na.wav,,\nb.wav,150,0.4\n', told);
    expect(first!.spanLengthM).toEqual({ value: 0.2, standardUncertainty: 0.001 });
    expect(first!.ends[1]).toEqual({ kind: 'known', value: { value: 1, standardUncertainty: 0.2 } });
    expect(first).toMatchObject({ toleranceRelative: 0.15, expectedForceN: { lowN: 5, highN: 40 } });
    expect(second!.spanLengthM!.value).toBeCloseTo(0.15, 12);
    expect(second!.spanLengthM!.standardUncertainty).toBe(0.001);
    expect(second!.ends[0]).toEqual({ kind: 'known', value: { value: 0, standardUncertainty: 0.4 } });
    const [bare] = setups('file\na.wav\n');
    expect(bare).toMatchObject({ spanLengthM: undefined, belt: undefined });
    expect(bare!.ends[0]).toEqual({ kind: 'unknown' });
  });

  it('reads the decimal comma where the semicolon separates', () => {
    const [setup] = setups('\ufefffile;span_mm;density_g_per_m;fixity\r\nmeine Aufnahme.wav;150,5;7,812;0,5\r\n');
    expect(setup!.spanLengthM!.value).toBeCloseTo(0.1505, 12);
    expect(setup!.belt!.linearDensityKgPerM.value).toBeCloseTo(0.007812, 12);
    expect(setup!.ends[0]).toMatchObject({ value: { value: 0.5 } });
  });

  it('reads both ends from one cell', () => {
    for (const text of ['file,fixity\na.wav,"0,1"\n', 'file;fixity\na.wav;"0;1"\n', 'file,fixity\na.wav,"0;1"\n']) {
      expect(setups(text)[0]!.ends).toMatchObject([{ value: { value: 0 } }, { value: { value: 1 } }]);
    }
    expect(complaints('file;fixity\na.wav;0,1\n')[0]).toContain('takes.csv, row 1, column fixity');
  });

  it('keeps the order and the names of the files', () => {
    expect(takes('file\nb.wav\nsub/a.wav\nb.wav\n').map(({ file }) => file)).toEqual(['b.wav', 'sub/a.wav', 'b.wav']);
    expect(takes('file\n')).toEqual([]);
  });

  it.each([
    ['file,span\na.wav,1\n', 'takes.csv, line of names, column span: There is no such column.'],
    ['file,Span_mm\na.wav,1\n', 'takes.csv, line of names, column Span_mm: There is no such column.'],
    ['span_mm\n150\n', 'takes.csv, line of names: The column file is missing.'],
    ['', 'takes.csv, line of names, column 1: It holds no line with the names of the columns.'],
    ['file,span_mm\na.wav,abc\n', "takes.csv, row 1, column span_mm: 'abc' is not a number"],
    ['file,span_mm\na.wav,150\nb.wav,150 mm\n', "takes.csv, row 2, column span_mm: '150 mm' is not a number"],
    ['file,span_mm\na.wav,0\n', "takes.csv, row 1, column span_mm: '0' is not above 0"],
    ['file,span_mm\na.wav,-3\n', "takes.csv, row 1, column span_mm: '-3' is not above 0"],
    ['file,span_mm\na.wav,Infinity\n', "takes.csv, row 1, column span_mm: 'Infinity' is not a number"],
    ['file,u_span_mm\na.wav,-1\n', "takes.csv, row 1, column u_span_mm: '-1' is not above 0"],
    ['file,fixity\na.wav,1.5\n', "takes.csv, row 1, column fixity: '1.5' is not a fixity"],
    ['file,span_mm\n,150\n', 'takes.csv, row 1, column file: The file is not named.'],
    ['file,span_mm\na.wav,150,7\n', 'takes.csv, row 1, column 3: There are more cells than columns.'],
  ])('%j names row and column', (text, start) => {
    expect(complaints(text)[0]!.startsWith(start)).toBe(true);
  });

  it('tells every bad cell, and lets an uncertainty be 0', () => {
    expect(complaints('file,span_mm,fixity\na.wav,x,2\nb.wav,y,\n')).toHaveLength(3);
    expect(setups('file,span_mm,u_span_mm\na.wav,150,0\n')[0]!.spanLengthM!.standardUncertainty).toBe(0);
  });
});
