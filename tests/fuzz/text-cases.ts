/** What people type and what comes in by files and links: quantities, the kept document, a setup in an address. */

import { FILE_FORMAT, fileText, readFileText } from '../../shared/document/file.ts';
import { linkOf, readLink } from '../../shared/link.ts';
import { toldFixity, toldForceRange, toldQuantity, toldShare } from '../../src/cli/values.ts';
import { formatNumber } from '../../src/core/quantity/format.ts';
import { parseQuantity, type QuantityKind, unitsOf } from '../../src/core/quantity.ts';
import { usageFaultText } from '../../src/words/cli-en.ts';
import { linkEn } from '../../src/words/link-en.ts';
import { exampleDocument } from '../support/kept-example.ts';
import { type Draw, damagedText, NUMBERS, numberText, TEXTS } from './hostile.ts';
import { want, wantNoNaN, wantSentence } from './wanted.ts';

const KINDS: readonly QuantityKind[] = ['length', 'linear-density', 'force', 'mass', 'stiffness', 'frequency', 'percent', 'number'];
const ALL_UNITS = [...new Set(KINDS.flatMap((kind) => unitsOf(kind)))];

function typedText(draw: Draw): string {
  const part = () => `${numberText(draw)}${draw.pick(['', ' '])}${draw.chance(0.7) ? draw.pick(ALL_UNITS) : draw.pick(TEXTS)}`;
  const text = draw.chance(0.4) ? `${part()}${draw.pick(['±', '+-', ' +/- ', '..', ','])}${part()}` : part();
  return draw.chance(0.4) ? damagedText(text, draw, 3) : text;
}

export function quantityCase(draw: Draw): void {
  const kind = draw.pick(KINDS);
  const text = draw.chance(0.1) ? draw.pick(TEXTS) : typedText(draw);
  const options = { kind, defaultUnit: unitsOf(kind)[0]!, toothPitchM: draw.pick([undefined, 0.002]) };
  const decimalSign = draw.pick([undefined, '.', ',', 'any'] as const);
  const parsed = parseQuantity(text, { ...options, decimalSign, zeroAllowed: draw.chance(0.5) });
  wantNoNaN(parsed);
  if (parsed.ok) {
    want(parsed.value >= 0 && Number.isFinite(parsed.value), `${JSON.stringify(text)} became ${parsed.value}`);
    want(unitsOf(kind).includes(parsed.unit), `a ${kind} in ${parsed.unit}`);
    want(!/NaN|undefined/u.test(formatNumber(parsed.value, { significantDigits: 3 })), 'a value that prints as no figure');
    const named = unitNamed(text);
    want(named === undefined || unitsOf(kind).includes(named), `${JSON.stringify(text)} was read as a ${kind} in ${parsed.unit}`);
    want(parsed.standardUncertainty === undefined || parsed.standardUncertainty >= 0, `${JSON.stringify(text)} has a doubt below 0`);
  }
  for (const told of [toldQuantity(text, options), toldShare(text), toldForceRange(text), toldFixity(text)]) {
    wantNoNaN(told);
    if (!told.ok)
      wantSentence(usageFaultText({ what: 'bad-value', option: '--span', text, fault: told.fault }), {
        quoted: [text, ('unit' in told.fault && told.fault.unit) || ''],
      });
  }
}

/** The unit of a plain 'number unit'; what is more than that is not judged here. */
function unitNamed(text: string): string | undefined {
  const unit = /^\d+(?:\.\d+)? ?([a-z/]+)$/iu.exec(text)?.[1];
  return unit !== undefined && ALL_UNITS.includes(unit) ? unit : undefined;
}

const NAMES = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', 'id', 'value', 'made', 'kind'];

function nested(depth: number, draw: Draw): string {
  const [open, close] = draw.pick([
    ['[', ']'],
    ['{"a":', '}'],
  ] as const);
  return open.repeat(depth) + (open === '[' ? '' : '1') + close.repeat(depth);
}

function hostileJson(draw: Draw): string {
  const kinds = [
    () => draw.pick(['1e999', '-1e999', '1e-999', '-0', '9'.repeat(400), 'null', 'true', '[]', '{}']),
    () => JSON.stringify(draw.pick(TEXTS)),
    () => String(draw.pick(NUMBERS.filter(Number.isFinite))),
    () => nested(draw.pick([1, 20, 500, 20_000]), draw),
    () => `{"${draw.pick(NAMES)}":{"isAdmin":true}}`,
  ];
  return draw.pick(kinds)();
}

const whole = fileText(exampleDocument, '2026-03-02T08:15:00.000Z');
const SPOTS = [...whole.matchAll(/: ("(?:[^"\\]|\\.)*"|-?[\d.e+-]+|true|false)/gu)].map((match) => ({
  at: match.index + 2,
  length: match[1]!.length,
}));

/** A saved file with values put in for others, names added, text damaged; or something that only begins as one. */
function documentText(draw: Draw): string {
  if (draw.chance(0.1)) return hostileJson(draw);
  if (draw.chance(0.2))
    return `{"format":"${FILE_FORMAT}","version":${hostileJson(draw)},"${draw.pick([...NAMES, 'machines'])}":${hostileJson(draw)}}`;
  const spot = draw.pick(SPOTS);
  const isName = draw.chance(0.2);
  const put = isName ? `1,"${draw.pick(NAMES)}":${hostileJson(draw)}` : hostileJson(draw);
  const text = whole.slice(0, spot.at) + put + whole.slice(spot.at + spot.length);
  return draw.chance(0.2) ? damagedText(text, draw) : text;
}

export function documentCase(draw: Draw): void {
  const read = readFileText(documentText(draw));
  want(!('isAdmin' in {}), 'an imported name reached the prototype of all objects');
  if (read.ok) {
    wantNoNaN(read.document);
    const again = readFileText(fileText(read.document, '2026-03-02T08:15:00.000Z'));
    want(again.ok, 'what was taken in cannot be read again once it is saved');
    return;
  }
  if (read.why === 'fault') {
    want(read.path !== '', 'a fault without its place');
    wantSentence(read.detail);
    want(!/Invalid|expected|received/u.test(read.detail), `a fault in the words of a library: ${read.detail}`);
  }
}

const LINK = linkOf({
  beltId: 'own',
  linearDensity: '7.8',
  toothPitch: '2',
  bendingStiffness: '',
  spanLength: '180',
  spanKnownTo: '1',
  targetFrom: '6',
  targetTo: '9',
  forceUnit: 'N',
  tolerance: '10',
  ends: ['pulley', 'clip'],
  lie: 'edge',
  weighing: { beltId: 'own', kind: 'piece', length: '500', mass: '3.9', scaleStep: '0.1', density: '7.8' },
});
const LINK_NAMES = ['v', 'belt', 'span', 'own', 'weighed', 'ends', 'unit', ...NAMES];

export function linkCase(draw: Draw): void {
  const value = () =>
    draw.chance(0.5) ? encoded(draw.pick([draw.pick(TEXTS), hostileJson(draw)])) : draw.pick(['%', '%zz', '%ff', '~~~~~', '1']);
  const parts = draw.chance(0.7) ? LINK.split('&') : [];
  for (let count = draw.below(4); count > 0; count--) {
    parts.splice(draw.below(parts.length + 1), draw.below(2), `${draw.pick(LINK_NAMES)}=${value()}`);
  }
  const query = draw.chance(0.5) ? damagedText(parts.join('&'), draw, 3) : parts.join('&');
  const read = readLink(query);
  wantNoNaN(read);
  want(!('isAdmin' in {}), 'a linked name reached the prototype of all objects');
  if ('kind' in read) wantSentence(linkEn.fault(read), { quoted: ['field' in read ? read.field : ''] });
  else want(JSON.stringify(readLink(linkOf(read))) === JSON.stringify(read), 'a link that was read is not written as it was');
}

/** Halves of a pair of surrogates cannot be written in an address. */
const encoded = (text: string): string => encodeURIComponent(text.replace(/\p{Cs}/gu, ''));
