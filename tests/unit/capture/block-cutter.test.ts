import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BLOCK_FRAMES, BlockCutter } from '../../../src/capture/block-cutter.ts';

const ramp = (first: number, length: number) => Float32Array.from({ length }, (_, index) => first + index);

test('quanta of any sizes come out as full blocks with every sample in its place', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 3000 }), { minLength: 1, maxLength: 30 }),
      fc.integer({ min: 0, max: 1e6 }),
      (sizes, start) => {
        const cutter = new BlockCutter();
        let frame = start;
        const blocks = sizes.flatMap((size) => {
          const quantum = ramp(frame % 4096, size);
          const cut = cutter.cut(quantum, frame);
          frame += size;
          return cut;
        });
        expect(blocks).toHaveLength(Math.floor((frame - start) / BLOCK_FRAMES));
        blocks.forEach((block, index) => {
          expect(block.samples).toHaveLength(BLOCK_FRAMES);
          expect(block.firstFrame).toBe(start + index * BLOCK_FRAMES);
        });
      },
    ),
  );
});

test('the samples are copied: the quantum may be used again', () => {
  const cutter = new BlockCutter();
  const quantum = ramp(0, 128);
  const blocks = Array.from({ length: 8 }, (_, index) => {
    quantum.set(ramp(index * 128, 128));
    return cutter.cut(quantum, index * 128);
  }).flat();
  expect(blocks).toEqual([{ samples: ramp(0, 1024), firstFrame: 0 }]);
});

test('a jump in the frames ends a block early, so that samples in one block follow one another', () => {
  const cutter = new BlockCutter();
  expect(cutter.cut(ramp(0, 300), 0)).toEqual([]);
  expect(cutter.cut(ramp(500, 1024), 500)).toEqual([
    { samples: ramp(0, 300), firstFrame: 0 },
    { samples: ramp(500, 1024), firstFrame: 500 },
  ]);
});
