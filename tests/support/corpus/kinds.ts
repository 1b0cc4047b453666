/** The kinds of difficulty: each a change of an ordinary plan, graded by chance within its bounds, so that two or three can be mixed. */

import type { Random } from '../../../src/core/synthesis/random.ts';
import { type DrawnBelt, drawBelt } from './belt.ts';
import { happens, logBetween, oneOf } from './chance.ts';
import { drawDecayS, drawPlan, drawPluck, type MotorTone, type TakePlan } from './plan.ts';

type Change = (plan: TakePlan, random: Random) => TakePlan;

/** `listed`: what the estimator must do. `variant`: physics that its model does not know. `beyond`: harder than asked. */
export type KindGroup = 'listed' | 'variant' | 'beyond';

export interface Kind {
  readonly name: string;
  readonly group: KindGroup;
  draw(random: Random): TakePlan;
}

const noise =
  (colour: 'white' | 'pink', overDb: number): Change =>
  (plan) => ({ ...plan, whiteDb: colour === 'white' ? -overDb : -60, pinkDb: colour === 'pink' ? -overDb : -60 });

const room: Change = (plan, random) => ({
  ...plan,
  room: { reverberationS: random.between(0.2, 0.6), tailDb: random.between(-18, -4) },
});

const hum: Change = (plan, random) => {
  const loudestDb = random.between(-18, 8);
  const harmonicsDb = Array.from({ length: 14 }, (_, index) => loudestDb - random.between(0, 8) - (index % 2 === 1 ? 4 : 0) - 1.2 * index);
  return { ...plan, hum: { mainsHz: oneOf(random, [50, 60]) + random.between(-0.05, 0.05), harmonicsDb } };
};

const harmonics = (random: Random, loudestDb: number, count: number, fallDb: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => loudestDb - fallDb * index - (index === 0 ? 0 : random.between(0, 8)));

const fan: Change = (plan, random) => ({
  ...plan,
  pinkDb: random.between(-26, -10),
  motors: [
    {
      frequencyHz: logBetween(random, 60, 420),
      harmonicsDb: harmonics(random, random.between(-18, 2), 4, 4),
      wander: logBetween(random, 0.0005, 0.008),
      glidePerS: 0,
    },
  ],
});

const stepperTone = (random: Random, glidePerS: number): MotorTone => ({
  frequencyHz: logBetween(random, 80, 1200),
  harmonicsDb: harmonics(random, random.between(-18, 2), 7, 3),
  wander: 0,
  glidePerS,
});

const stepper: Change = (plan, random) => ({ ...plan, motors: [stepperTone(random, 0)] });

const glidingStepper: Change = (plan, random) => ({
  ...plan,
  motors: [stepperTone(random, logBetween(random, 0.02, 0.6) * oneOf(random, [-1, 1]))],
});

const weakFirst =
  (fromDb: number, toDb: number): Change =>
  (plan, random) => ({
    ...withOvertones(plan, random),
    corner: { kind: 'first partial down', downDb: random.between(fromDb, toDb), order: fromDb < 18 && happens(random, 0.5) ? 2 : 4 },
  });

const absentFirst: Change = (plan, random) => ({ ...withOvertones(plan, random), corner: { kind: 'first partial absent' } });

/** Where the first partial is to be weak there must be others: a quick release off the middle, no extreme damping. */
function withOvertones(plan: TakePlan, random: Random): TakePlan {
  const pluck = plan.plucks[0]!;
  return {
    ...plan,
    damping: { ...plan.damping, square: Math.min(plan.damping.square, 0.03), linear: Math.min(plan.damping.linear, 0.3) },
    plucks: [{ ...pluck, placeShare: random.between(0.12, 0.34), letGoS: Math.min(pluck.letGoS, 0.0006) }, ...plan.plucks.slice(1)],
  };
}

const hardPluck: Change = (plan, random) => ({ ...plan, glideRelative: logBetween(random, 0.01, 0.1) });

const neighbour: Change = (plan, random) => ({
  ...plan,
  neighbour: {
    ratio: random.between(1.03, 1.2) ** oneOf(random, [-1, 1]),
    levelDb: random.between(-20, -4),
    decayRatio: random.between(0.6, 1.6),
    buildUpS: happens(random, 0.5) ? 0 : random.between(0.004, 0.03),
  },
});

const torsion: Change = (plan, random) => ({
  ...plan,
  torsion: { ratio: random.between(1.5, 2.5), levelDb: random.between(-20, -2), decayRatio: random.between(0.3, 1.2) },
});

const fingerNoise: Change = (plan, random) => ({
  ...plan,
  scrape: { peakDb: random.between(-8, 8), decayS: random.between(0.003, 0.012), leadS: random.between(0.002, 0.015) },
});

const buzz: Change = (plan, random) => ({
  ...plan,
  contact: {
    placeShare: random.between(0.12, 0.88),
    gapShare: random.between(0.25, 0.8),
    hardness: logBetween(random, 5, 100),
    knockDb: random.between(-24, -6),
  },
});

const clipped: Change = (plan, random) => ({
  ...plan,
  peakDbfs: 0,
  alterations: [...plan.alterations, { kind: 'gain', gainDb: random.between(6, 18), soft: happens(random, 0.3) }],
});

const gainControl: Change = (plan, random) => ({
  ...plan,
  alterations: [
    ...plan.alterations,
    {
      kind: 'gain control',
      aimDbfs: random.between(-20, -12),
      mostGainDb: random.between(12, 30),
      attackS: logBetween(random, 0.002, 0.02),
      releaseS: logBetween(random, 0.08, 0.6),
    },
  ],
});

const suppression: Change = (plan, random) => ({
  ...plan,
  alterations: [...plan.alterations, { kind: 'noise suppression', deepestDb: random.between(10, 24), learnS: random.between(0.25, 0.8) }],
});

const fewBits: Change = (plan, random) => ({
  ...plan,
  peakDbfs: random.between(-10, -1),
  alterations: [...plan.alterations, { kind: 'few bits', bits: 8 }],
});

const narrowLine: Change = (plan, random) => {
  const narrow = happens(random, 0.5);
  return {
    ...plan,
    sampleRateHz: narrow ? 8000 : 16_000,
    peakDbfs: random.between(-12, -3),
    alterations: [{ kind: 'narrow line', cornerHz: narrow ? random.between(150, 300) : random.between(50, 120), times: narrow ? 6 : 3 }],
  };
};

const severalPlucks: Change = (plan, random) => {
  const count = 2 + Math.floor(4 * random.uniform());
  const plucks = Array.from({ length: count - 1 }, () => ({
    ...drawPluck(random, plan.belt.spanLengthM),
    heightM: plan.plucks[0]!.heightM * random.between(0.5, 1.2),
    afterS: Math.max(random.between(0.5, 1), 2 * plan.damping.decayS + 0.15),
  }));
  return { ...plan, plucks: [...plan.plucks, ...plucks] };
};

const doublePluck: Change = (plan, random) => ({
  ...plan,
  plucks: [plan.plucks[0]!, { ...plan.plucks[0]!, afterS: random.between(0.02, 0.09), touchS: random.between(0.002, 0.008) }],
});

const atRate =
  (sampleRateHz: number): Change =>
  (plan) => ({ ...plan, sampleRateHz });

const shortLead: Change = (plan, random) => ({ ...plan, leadS: random.between(0.07, 0.15) });
const insideRing: Change = (plan, random) => ({ ...plan, leadS: -random.between(0.01, 0.4 * Math.min(0.15, plan.damping.decayS)) });

const clean: Change = (plan) => ({ ...plan, whiteDb: -80, pinkDb: -80 });

const massRipple: Change = (plan, random) => ({
  ...plan,
  oddity: {
    ripple: {
      toothPitchM: Math.max(plan.belt.toothPitchM, plan.belt.spanLengthM / 60),
      massShare: random.between(0.1, 0.35),
      stiffnessShare: random.between(0.2, 0.6),
      slowShares: [random.gaussian() * 0.02, random.gaussian() * 0.015, random.gaussian() * 0.01],
      phase: 2 * Math.PI * random.uniform(),
    },
  },
});

const rocking: Change = (plan, random) => ({
  ...plan,
  oddity: { rocking: { massRatio: logBetween(random, 4, 25), resonanceRatio: logBetween(random, 2, 12) } },
});

const coupledTwist: Change = (plan, random) => ({
  ...plan,
  microphone: { ...plan.microphone, twistShare: random.between(0.2, 0.9) },
  oddity: { twist: { ratio: random.between(1.3, 2.6), offset: random.between(0.08, 0.4) } },
});

const frameModes: Change = (plan, random) => ({
  ...plan,
  frame: {
    modes: Array.from({ length: 3 }, () => ({ ratio: logBetween(random, 1.2, 12), decayS: logBetween(random, 0.006, 0.06) })),
    levelDb: random.between(-20, -3),
  },
});

/** A change on an ordinary belt. */
const ordinary = (name: string, ...changes: readonly Change[]): Kind => ({
  name,
  group: 'listed',
  draw: (random) => changes.reduce((plan, change) => change(plan, random), drawPlan(random)),
});

const onBelt = (name: string, belt: (random: Random) => DrawnBelt, change: Change = (plan) => plan): Kind => ({
  name,
  group: 'listed',
  draw: (random) => change(drawPlan(random, belt(random)), random),
});

const inGroup = (group: KindGroup, kind: Kind): Kind => ({ ...kind, group });

const slackBelt = (random: Random): DrawnBelt => drawBelt(random, { forceN: [1, 5], fundamentalHz: [25, 90] });

/** Swings five to twelve times before it has died. */
const damped: Change = (plan, random) => ({
  ...plan,
  damping: {
    ...plan.damping,
    decayS: drawDecayS(random, plan.belt.fundamentalHz, { low: 5, high: 12 }),
    linear: random.between(0.05, 0.4),
    square: logBetween(random, 0.004, 0.03),
  },
});

const shortStiffBelt = (random: Random): DrawnBelt =>
  drawBelt(random, { spanLengthM: [0.04, 0.11], stiffness: [0.06, 0.3], fundamentalHz: [60, 650] });

const sturdyBelt = (random: Random): DrawnBelt => drawBelt(random, { mostFixity: 0.9 });

/** What may be mixed; none of them undoes another. */
const MIXABLE: readonly { readonly part: string; readonly change: Change }[] = [
  { part: 'noise', change: (plan, random) => noise(oneOf(random, ['white', 'pink'] as const), random.between(10, 20))(plan, random) },
  { part: 'room', change: room },
  { part: 'hum', change: hum },
  { part: 'motor', change: stepper },
  { part: 'corner', change: weakFirst(6, 18) },
  { part: 'glide', change: (plan, random) => ({ ...plan, glideRelative: logBetween(random, 0.01, 0.04) }) },
  { part: 'span', change: neighbour },
  { part: 'twist', change: torsion },
  { part: 'finger', change: fingerNoise },
  { part: 'contact', change: buzz },
  { part: 'level', change: clipped },
  { part: 'bits', change: fewBits },
  { part: 'damping', change: damped },
];

const mixture = (name: string, count: number): Kind => ({
  name,
  group: 'listed',
  draw: (random) => {
    let left = [...MIXABLE];
    let plan = drawPlan(random);
    for (let taken = 0; taken < count; taken++) {
      const next = oneOf(random, left);
      left = left.filter((other) => other !== next);
      // Rails and few bits both set the level, the strongest last; a damped span hides what a corner leaves.
      if (next.part === 'level') left = left.filter(({ part }) => part !== 'bits');
      if (next.part === 'bits') left = left.filter(({ part }) => part !== 'level');
      if (next.part === 'damping') left = left.filter(({ part }) => part !== 'corner');
      if (next.part === 'corner') left = left.filter(({ part }) => part !== 'damping');
      plan = next.change(plan, random);
    }
    return plan;
  },
});

export const KINDS: readonly Kind[] = [
  ordinary('clean', clean),
  ordinary('white noise 20 dB', noise('white', 20)),
  ordinary('white noise 10 dB', noise('white', 10)),
  ordinary('white noise 5 dB', noise('white', 5)),
  ordinary('pink noise 20 dB', noise('pink', 20)),
  ordinary('pink noise 10 dB', noise('pink', 10)),
  ordinary('pink noise 5 dB', noise('pink', 5)),
  ordinary('room', room),
  ordinary('mains hum', hum),
  ordinary('fan', fan),
  ordinary('stepper', stepper),
  ordinary('gliding stepper', glidingStepper),
  ordinary('first partial weak', weakFirst(6, 18)),
  ordinary('first partial faint', weakFirst(18, 30)),
  ordinary('first partial absent', absentFirst),
  onBelt('short and stiff', shortStiffBelt),
  onBelt('slack and damped', slackBelt, damped),
  ordinary('strongly damped', damped),
  ordinary('hard pluck', hardPluck),
  ordinary('neighbour span', neighbour),
  ordinary('torsion', torsion),
  ordinary('finger noise', fingerNoise),
  ordinary('touches the frame', buzz),
  ordinary('clipped', clipped),
  ordinary('gain control', gainControl),
  ordinary('noise suppression', suppression),
  ordinary('several plucks', severalPlucks),
  ordinary('double pluck', doublePluck),
  ordinary('8 bit', fewBits),
  ordinary('narrow line', narrowLine),
  ordinary('8 kHz', atRate(8000)),
  ordinary('16 kHz', atRate(16_000)),
  ordinary('96 kHz', atRate(96_000)),
  ordinary('short lead', shortLead),
  mixture('two difficulties', 2),
  mixture('three difficulties', 3),
  inGroup('variant', onBelt('coupled torsion', sturdyBelt, coupledTwist)),
  inGroup('variant', onBelt('uneven belt', sturdyBelt, massRipple)),
  inGroup('variant', onBelt('rocking pulley', sturdyBelt, rocking)),
  inGroup('variant', ordinary('frame rings', frameModes)),
  inGroup('beyond', ordinary('inside the ring', insideRing)),
];
