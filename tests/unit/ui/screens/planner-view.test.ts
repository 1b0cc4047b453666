import { beforeAll, describe, expect, it } from 'vitest';
import { type AskedPlan, askPlan, type PlanAnswer } from '../../../../src/core/machine/ask-plan.ts';
import type { EnteredSetup } from '../../../../src/ports.ts';
import { Figures } from '../../../../src/ui/format.ts';
import { askedPlan, hearsOf } from '../../../../src/ui/screens/planner/plan-question.ts';
import { between, cyclesAt, hertzAt, plannerView, sinksFromM } from '../../../../src/ui/screens/planner/planner-view.ts';
import { EMPTY_SETUP, OWN_BELT } from '../../../../src/ui/state/span-setup.ts';
import { initialState } from '../../../../src/ui/state/state.ts';

const figures = new Figures('en-GB');
const FIELDS = { hearsFrom: '', longest: '' };
const entered: EnteredSetup = {
  ...EMPTY_SETUP,
  beltId: OWN_BELT,
  linearDensity: '7.9 ± 0.08 g/m',
  spanLength: '60',
  targetFrom: '6',
  targetTo: '9',
};

describe('askedPlan', () => {
  it('asks nothing without a belt or a force', () => {
    expect(askedPlan(initialState(), FIELDS)).toBeUndefined();
    expect(askedPlan(initialState({ ...entered, linearDensity: '' }), FIELDS)).toBeUndefined();
  });

  it('takes the target, the span in hand, and what was typed of microphone and reach', () => {
    const asked = askedPlan(initialState(entered), { hearsFrom: '80', longest: '300 mm' })!;
    expect(asked.question.forceN).toEqual({ lowN: 6, highN: 9 });
    expect(asked.question.lowestHz).toBe(80);
    expect(asked.reach.toM).toBeCloseTo(0.3, 12);
    expect(asked.nowM).toBeCloseTo(0.06, 12);
  });

  it('goes by the room that was measured, unless something was typed', () => {
    const measured = { lowestHz: 64, by: 'fall' } as const;
    expect(hearsOf(initialState(entered), { ...FIELDS, measured })).toEqual(measured);
    expect(hearsOf(initialState(entered), { ...FIELDS, measured, hearsFrom: '70 Hz' })).toEqual({ lowestHz: 70, by: 'typed' });
    expect(hearsOf(initialState(entered), FIELDS).by).toBe('assumed');
  });
});

describe('plannerView', () => {
  let asked: AskedPlan;
  let answer: PlanAnswer;
  beforeAll(() => {
    asked = askedPlan(initialState({ ...entered, tolerance: '10' }), { ...FIELDS, hearsFrom: '100' })!;
    answer = askPlan(asked)!;
  });

  it('shows the zones, both curves, the span in hand and where to park, all of it in words too', () => {
    const view = plannerView(asked, answer, figures);
    expect(view.zones.map(({ grade }) => grade)).toContain('trusted');
    expect(view.label).toMatch(/mm: unusable\. .*: trusted\./u);
    expect(view.now?.label).toBe('60\u00a0mm now');
    expect(view.park!.spanM).toBeGreaterThan(answer.plan.shortestTrustedM!);
    expect(view.curveLabels).toEqual(['at 6\u00a0N', 'at 9\u00a0N']);
    expect(view.notes[0]!.where).toMatch(/^Below/u);
    expect(view.notes[0]!.why.join(' ')).toMatch(/Span too short: /u);
    expect(view.table.rows.length).toBeGreaterThan(8);
    expect(view.reach.toM).toBeLessThanOrEqual(asked.reach.toM);
  });

  it('tells figures between two planned lengths, and from where partial 1 sinks', () => {
    const { spans } = answer.plan;
    const [one, other] = [spans[3]!, spans[4]!];
    const middle = between(spans, (one.spanLengthM + other.spanLengthM) / 2, ({ atLow }) => atLow.frequencyHz);
    expect(middle).toBeLessThan(one.atLow.frequencyHz);
    expect(middle).toBeGreaterThan(other.atLow.frequencyHz);
    expect(hertzAt(spans, one.spanLengthM, figures)).toMatch(/^\d+–\d+$/u);
    expect(cyclesAt(spans, one.spanLengthM, figures)).toBe('18');
    const sinks = sinksFromM(asked, spans)!;
    expect(between(spans, sinks, ({ atLow }) => atLow.frequencyHz)).toBeLessThan(100);
  });

  it('says from where on a belt that nobody weighed could be trusted once it is', () => {
    const unweighed = askedPlan(initialState({ ...EMPTY_SETUP, targetFrom: '6', targetTo: '9' }), FIELDS)!;
    const { plan, trustedOnceWeighedM } = askPlan(unweighed)!;
    expect(plan.shortestTrustedM).toBeUndefined();
    expect(trustedOnceWeighedM).toBeGreaterThan(0.04);
    expect(trustedOnceWeighedM).toBeLessThan(0.12);
    expect(answer.trustedOnceWeighedM).toBeUndefined();
  });

  it('parks inside the trusted zone, on whole centimetres where there is room', () => {
    const trusted = answer.plan.zones.find(({ grade }) => grade === 'trusted')!;
    expect(answer.park!.spanLengthM).toBeGreaterThan(trusted.fromM);
    expect(answer.park!.spanLengthM).toBeLessThan(trusted.toM);
    expect((answer.park!.spanLengthM * 100) % 1).toBeCloseTo(0, 6);
  });
});
