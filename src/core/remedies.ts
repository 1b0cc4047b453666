/** What each remedy would give: the same plucks under the force that was read, on a setup that is longer, weighed or better known, judged anew. */

import { heardSounds, readingOf, type Take } from './answer.ts';
import { expectedPartialsHz } from './force/expected.ts';
import { type Measured, relativeUncertainty } from './math/measured.ts';
import type { PluckSound, Reading } from './outcome.ts';
import { ASSUMED_UNCERTAINTY, type BeltKnowledge, type EndFixity, type SpanSetup } from './setup.ts';

export type RemedyKind = 'longer-span' | 'weighed' | 'longer-span-weighed' | 'ends-and-stiffness-known' | 'span-measured';

export interface Remedy {
  readonly kind: RemedyKind;
  /** Of the setup that the remedy would make. */
  readonly spanLengthM: number;
  readonly reading: Reading;
}

/** A metre of belt on a scale that reads to 0.1 g, cut to a few millimetres. */
const WEIGHED_RELATIVE = 0.005;
/** A caliper or a good rule at both tangent points: ± 0.3 mm at 95 %. */
export const MEASURED_SPAN_M = 0.00015;
/** A span that is worth moving a carriage for ends on 5 mm. */
const SPAN_STEP_M = 0.005;
/** What helps less than this is not worth the work. */
const WORTH_RELATIVE = 0.05;

/** The remedies that narrow the interval or raise the grade, the surest first; none where there is no force. */
export function remediesOf(take: Take, now: Reading): readonly Remedy[] {
  const { forceN } = now;
  const { spanLengthM } = take.setup;
  if (!forceN || !spanLengthM) return [];
  return changes(take.setup, now)
    .flatMap(({ kind, setup }): Remedy[] => {
      const reading = readingOf({ ...take, setup, sounds: soundsUnder(heardSounds(take), now, setup), touched: undefined });
      return reading?.forceN ? [{ kind, spanLengthM: setup.spanLengthM?.value ?? spanLengthM.value, reading }] : [];
    })
    .filter(({ reading }) => isBetter(reading, now))
    .sort((one, two) => u95Of(one.reading) - u95Of(two.reading));
}

const u95Of = ({ forceN }: Reading): number => forceN?.u95 ?? Number.POSITIVE_INFINITY;
const isBetter = (then: Reading, now: Reading): boolean => u95Of(then) < (1 - WORTH_RELATIVE) * u95Of(now);

/** The belt as if it had been weighed with care; undefined where it is known as well already. */
export function weighedBelt(belt: BeltKnowledge | undefined): BeltKnowledge | undefined {
  if (!belt || relativeUncertainty(belt.linearDensityKgPerM) <= WEIGHED_RELATIVE) return undefined;
  return { ...belt, linearDensityKgPerM: withRelativeU(belt.linearDensityKgPerM.value, WEIGHED_RELATIVE), densityFrom: 'weighed' };
}

/** The length as if it had been measured with care; undefined where it is known as well already. */
export function measuredSpan(spanLengthM: Measured | undefined): Measured | undefined {
  if (!spanLengthM || spanLengthM.standardUncertainty <= MEASURED_SPAN_M) return undefined;
  return { value: spanLengthM.value, standardUncertainty: MEASURED_SPAN_M };
}

interface Change {
  readonly kind: RemedyKind;
  readonly setup: SpanSetup;
}

function changes(setup: SpanSetup, now: Reading): readonly Change[] {
  const weighed = weighedBelt(setup.belt);
  const longer = longerSpan(setup, now);
  const measured = measuredSpan(setup.spanLengthM);
  const known = knownEndsAndStiffness(setup);
  const all: (Change | undefined)[] = [
    longer && { kind: 'longer-span', setup: { ...setup, spanLengthM: longer } },
    weighed && { kind: 'weighed', setup: { ...setup, belt: weighed } },
    longer && weighed && setup.belt?.densityFrom === 'catalogue'
      ? { kind: 'longer-span-weighed', setup: { ...setup, spanLengthM: longer, belt: weighed } }
      : undefined,
    known && { kind: 'ends-and-stiffness-known', setup: known },
    measured && { kind: 'span-measured', setup: { ...setup, spanLengthM: measured } },
  ];
  return all.filter((change) => change !== undefined);
}

/** From where on the reason says that this span could be trusted, else twice as long; undefined where the length is not the trouble. */
function longerSpan({ spanLengthM }: SpanSetup, { reasons }: Reading): Measured | undefined {
  const short = reasons.find(({ id }) => id === 'span-too-short');
  if (!spanLengthM || short?.id !== 'span-too-short') return undefined;
  const fromM = short.trustedFromM ?? 2 * spanLengthM.value;
  return { ...spanLengthM, value: Math.ceil(fromM / SPAN_STEP_M - 1e-6) * SPAN_STEP_M };
}

/** Both measured once, as a bench with known weights would tell them; undefined where they are known already. */
export function knownEndsAndStiffness(setup: SpanSetup): SpanSetup | undefined {
  const { belt, ends } = setup;
  if (!belt) return undefined;
  const stiffness = belt.bendingStiffnessNm2;
  if (stiffness.kind === 'known' && ends.every(({ kind }) => kind === 'known')) return undefined;
  const value = stiffness.kind === 'known' ? stiffness.value : middleOf(stiffness);
  return { ...setup, belt: { ...belt, bendingStiffnessNm2: { kind: 'known', value } }, ends: [knownEnd(ends[0]), knownEnd(ends[1])] };
}

const middleOf = ({ low, high }: { readonly low: number; readonly high: number }): Measured =>
  withRelativeU(Math.sqrt(low * high), ASSUMED_UNCERTAINTY.bendingStiffnessRelative);

function knownEnd(end: EndFixity): EndFixity {
  if (end.kind === 'known') return end;
  const value = end.kind === 'between' ? (end.low + end.high) / 2 : 0.5;
  return { kind: 'known', value: { value, standardUncertainty: ASSUMED_UNCERTAINTY.endFixity } };
}

const withRelativeU = (value: number, relative: number): Measured => ({ value, standardUncertainty: relative * value });

/** The plucks as they would sound on that setup under the force that was read: same doubts, relative, and same scatter. */
function soundsUnder(sounds: readonly PluckSound[], { forceN, frequencyHz }: Reading, setup: SpanSetup): readonly PluckSound[] {
  const at = forceN?.value ?? 0;
  const places = expectedPartialsHz(setup, { lowN: at, highN: at });
  const placeOf = (number: number): number | undefined => places.find((place) => place.number === number)?.lowHz;
  const firstHz = placeOf(1);
  if (firstHz === undefined) return sounds;
  return sounds.map((sound) => {
    const scatter = sound.frequencyHz.value / frequencyHz.value;
    const moved = (from: Measured, toHz: number) => withRelativeU(toHz * scatter, relativeUncertainty(from));
    return {
      ...sound,
      frequencyHz: moved(sound.frequencyHz, firstHz),
      inharmonicity: undefined,
      partials: sound.partials.flatMap((partial) => {
        const toHz = placeOf(partial.number);
        return toHz === undefined ? [] : [{ ...partial, frequencyHz: moved(partial.frequencyHz, toHz) }];
      }),
    };
  });
}
