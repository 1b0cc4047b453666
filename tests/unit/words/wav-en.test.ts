import { expect, it } from 'vitest';
import { wavFaultText, wavNoteText } from '../../../src/words/wav-en.ts';

it('names what is wrong, where, and what to do', () => {
  expect(wavFaultText({ kind: 'wav-fault', why: 'header-ends', atByte: 30 })).toBe(
    'It says it is a WAV but ends inside its header, at byte 30. Save it again as WAV and try once more.',
  );
  expect(wavFaultText({ kind: 'wav-fault', why: 'compressed', atByte: 20, formatTag: 85 })).toContain(
    'compressed sound (format 85, MPEG layer 3)',
  );
  expect(wavFaultText({ kind: 'wav-fault', why: 'compressed', atByte: 20, formatTag: 4660 })).toContain('(format 4660)');
  expect(wavFaultText({ kind: 'wav-fault', why: 'rate-out-of-range', atByte: 24, sampleRateHz: 4e9 })).toContain('4000 MHz');
});

it('says what was noticed in few words', () => {
  expect(wavNoteText({ id: 'channel-used', channelUsed: 2, channelCount: 2 })).toBe('channel 2 of 2 used');
  expect(wavNoteText({ id: 'ends-early', foundS: 1.234, promisedS: 12.34 })).toBe('the file ends early: 1.23 s of 12.3 s are there');
});
