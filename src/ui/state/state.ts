/** Everything the page knows, and how each thing that happens changes it: one pure function. Levels and live spectra are not in here. */

import type { KeptBelt } from '../../../shared/document/belt.ts';
import type { Counsel } from '../../core/counsel.ts';
import { assertNever } from '../../core/outcome.ts';
import type { SoundProcessing } from '../../core/samples/recording.ts';
import type { CaptureFailure, EnteredSetup, FileFailure, HeardEvent, InputDevice } from '../../ports.ts';
import { counts, HEARING_THE_ROOM, type Hearing, hearingAfter } from './ear.ts';
import { EMPTY_SETUP, type UnderstoodSetup, understood } from './span-setup.ts';
import { type Answer, answerTo, heard, heardTouched, NO_ANSWER, type Take, withoutLast, worseProcessing } from './take.ts';

export type Activity =
  | { readonly kind: 'idle' }
  | { readonly kind: 'asking' }
  | ({
      readonly kind: 'listening';
      readonly source: 'microphone' | 'demo';
      readonly device?: InputDevice | undefined;
      readonly processing?: SoundProcessing | undefined;
      /** Passes when the sound comes back. */
      readonly obstacle?: 'paused' | 'silent' | undefined;
    } & Hearing)
  | { readonly kind: 'opening'; readonly fileName: string };

/** What stands in the Reading's place until the next act, since the person has to know it. */
export type Notice =
  | { readonly kind: 'capture-failure'; readonly failure: CaptureFailure }
  | { readonly kind: 'lost'; readonly why: 'gone' | 'recorder-failed' | 'analysis-failed' }
  | { readonly kind: 'file-failure'; readonly failure: FileFailure; readonly fileName: string };

export interface AppState {
  readonly entered: EnteredSetup;
  /** The person's own setup while the demo's stands in the fields. */
  readonly ownEntered?: EnteredSetup | undefined;
  readonly understood: UnderstoodSetup;
  /** Another place listens for itself: setup and take are its own, and what stood there waits. */
  readonly errand?: Errand | undefined;
  /** Belts that are kept, for the setup to choose from. */
  readonly ownBelts: readonly KeptBelt[];
  readonly activity: Activity;
  readonly take?: Take | undefined;
  readonly answer: Answer;
  /** What would help; of the answer before, until that of this one is reckoned. */
  readonly counsel?: Counsel | undefined;
  /** The next pluck is made with a finger on the middle of the span, to tell which numbering is right. */
  readonly deciding?: boolean | undefined;
  readonly notice?: Notice | undefined;
  /** The take is kept under this id. */
  readonly keptAs?: KeptAs | undefined;
  readonly devices: readonly InputDevice[];
  /** The device asked for; none: the system's own choice. */
  readonly deviceId?: string | undefined;
}

export interface KeptAs {
  readonly id: string;
  /** What was kept, in short: as long as the take has the same mark, nothing is to be kept anew. */
  readonly mark: string;
}

export interface Errand {
  /** Who asked, so that a place knows its own. */
  readonly owner: string;
  readonly waiting: { readonly entered: EnteredSetup; readonly take?: Take | undefined };
}

export type AppEvent =
  | { readonly kind: 'setup-entered'; readonly change: Partial<EnteredSetup> }
  | { readonly kind: 'errand-began'; readonly owner: string; readonly entered: EnteredSetup }
  | { readonly kind: 'errand-ended' }
  | { readonly kind: 'own-belts-known'; readonly belts: readonly KeptBelt[] }
  | { readonly kind: 'microphone-asked' }
  | { readonly kind: 'asking-dropped' }
  | { readonly kind: 'capture-failed'; readonly failure: CaptureFailure }
  | {
      readonly kind: 'listening-began';
      readonly source: 'microphone' | 'demo';
      readonly sampleRateHz: number;
      readonly processing?: SoundProcessing | undefined;
      readonly device?: InputDevice | undefined;
    }
  | { readonly kind: 'heard'; readonly event: HeardEvent }
  | { readonly kind: 'obstacle'; readonly obstacle?: 'paused' | 'silent' | undefined }
  | { readonly kind: 'listening-ended'; readonly lost?: 'gone' | 'recorder-failed' | 'analysis-failed' | undefined }
  | { readonly kind: 'file-opening'; readonly fileName: string }
  | { readonly kind: 'file-failed'; readonly failure: FileFailure; readonly fileName: string }
  | {
      readonly kind: 'recording-heard';
      readonly fileName: string;
      readonly events: readonly HeardEvent[];
      readonly notes: readonly string[];
      readonly sampleRateHz: number;
      readonly processing?: SoundProcessing | undefined;
    }
  /** `about`: the answer that it was asked for. */
  | { readonly kind: 'counselled'; readonly about: Answer; readonly counsel: Counsel }
  | { readonly kind: 'deciding-asked' }
  | { readonly kind: 'deciding-dropped' }
  | { readonly kind: 'pluck-undone' }
  | { readonly kind: 'started-over' }
  | { readonly kind: 'take-kept'; readonly as: KeptAs }
  | { readonly kind: 'notice-dismissed' }
  | { readonly kind: 'demo-asked' }
  | { readonly kind: 'demo-prepared'; readonly entered: EnteredSetup }
  | { readonly kind: 'demo-left' }
  | { readonly kind: 'devices-found'; readonly devices: readonly InputDevice[] }
  | { readonly kind: 'device-chosen'; readonly deviceId?: string | undefined };

export function initialState(entered: EnteredSetup = EMPTY_SETUP): AppState {
  return { entered, understood: understood(entered), ownBelts: [], activity: { kind: 'idle' }, answer: NO_ANSWER, devices: [] };
}

export function reduce(state: AppState, event: AppEvent): AppState {
  switch (event.kind) {
    case 'setup-entered':
      return withSetup(
        goesElsewhere(state, event.change) ? { ...state, take: startedOver(state) } : state,
        withPlace(state.entered, event.change),
      );
    case 'errand-began': {
      const own = withoutErrand(withoutDemo(state));
      const errand: Errand = { owner: event.owner, waiting: { entered: own.entered, take: own.take } };
      return withSetup({ ...own, errand, take: undefined, notice: undefined }, event.entered);
    }
    case 'errand-ended':
      return withoutErrand(state);
    case 'own-belts-known':
      return event.belts === state.ownBelts ? state : withSetup({ ...state, ownBelts: event.belts }, state.entered);
    case 'microphone-asked':
      return { ...withoutDemo(state), activity: { kind: 'asking' }, notice: undefined };
    case 'asking-dropped':
      return { ...state, activity: { kind: 'idle' } };
    case 'capture-failed':
      return { ...state, activity: { kind: 'idle' }, notice: { kind: 'capture-failure', failure: event.failure } };
    case 'listening-began': {
      const { source, device, processing } = event;
      const activity: Activity = { kind: 'listening', source, ...HEARING_THE_ROOM, device, processing };
      return withTake({ ...state, activity, notice: undefined }, takeFor(state, event));
    }
    case 'heard':
      return heardBy(state, event.event);
    case 'obstacle':
      return state.activity.kind === 'listening' ? { ...state, activity: { ...state.activity, obstacle: event.obstacle } } : state;
    case 'listening-ended':
      return { ...state, activity: { kind: 'idle' }, notice: event.lost ? { kind: 'lost', why: event.lost } : state.notice };
    case 'file-opening':
      return { ...withoutDemo(state), activity: { kind: 'opening', fileName: event.fileName }, notice: undefined };
    case 'file-failed':
      return { ...state, activity: { kind: 'idle' }, notice: { kind: 'file-failure', failure: event.failure, fileName: event.fileName } };
    case 'recording-heard': {
      const { fileName, notes, sampleRateHz, processing } = event;
      const next: AppState = { ...state, activity: { kind: 'idle' } };
      if (state.deciding && state.take) return decidedBy(next, { ...state.take, missed: [] }, event);
      const empty: Take = { source: 'recording', fileName, notes, sampleRateHz, processing, plucks: [], missed: [] };
      return withTake(next, event.events.reduce(heard, empty));
    }
    case 'pluck-undone':
      return state.take ? withTake({ ...state, notice: undefined }, withoutLast(state.take)) : state;
    case 'started-over':
      return withTake({ ...state, notice: undefined, deciding: undefined }, startedOver(state));
    case 'counselled':
      return event.about === state.answer ? { ...state, counsel: event.counsel } : state;
    case 'deciding-asked':
      return state.answer.octave ? { ...state, deciding: true, notice: undefined } : state;
    case 'deciding-dropped':
      return { ...state, deciding: undefined };
    case 'take-kept':
      return { ...state, keptAs: event.as };
    case 'notice-dismissed':
      return { ...state, notice: undefined };
    case 'demo-asked':
      return { ...state, activity: { kind: 'opening', fileName: '' }, notice: undefined };
    case 'demo-prepared':
      return withSetup({ ...state, take: undefined, notice: undefined, ownEntered: state.ownEntered ?? state.entered }, event.entered);
    case 'demo-left':
      return { ...withoutDemo(state), notice: undefined };
    case 'devices-found':
      return { ...state, devices: event.devices };
    case 'device-chosen':
      return { ...state, deviceId: event.deviceId };
    default:
      return assertNever(event);
  }
}

/** A take is the same one as long as it begins with the same pluck. */
const isSameTake = (before: Take | undefined, after: Take | undefined): boolean =>
  after?.plucks[0] !== undefined && after.plucks[0].sound === before?.plucks[0]?.sound;

function withTake(state: AppState, take: Take | undefined): AppState {
  const answer = answerTo(take, state.understood.setup);
  return {
    ...state,
    take,
    keptAs: isSameTake(state.take, take) ? state.keptAs : undefined,
    answer,
    counsel: answer.reading && state.counsel,
    deciding: answer.octave ? state.deciding : undefined, // there is nothing left to decide
  };
}

/** Another belt is not the machine's any more, and another length is not of that span. */
function withPlace({ on, ...entered }: EnteredSetup, change: Partial<EnteredSetup>): EnteredSetup {
  const next = { ...entered, ...change };
  if ('on' in change || !on || change.beltId !== undefined) return next;
  const { spanId: _, ...belt } = on;
  return { ...next, on: change.spanLength === undefined ? on : belt };
}

/** From one span of a machine to another: the plucks so far must not count for it. */
function goesElsewhere({ entered: { on } }: AppState, change: Partial<EnteredSetup>): boolean {
  return on !== undefined && change.on !== undefined && (on.machineBeltId !== change.on.machineBeltId || on.spanId !== change.on.spanId);
}

function withSetup(state: AppState, entered: EnteredSetup): AppState {
  const nowUnderstood = understood(entered, state.ownBelts);
  return withTake({ ...state, entered, understood: nowUnderstood }, state.take);
}

/** Back to what waited. What stands in the Reading's place was about the errand. */
function withoutErrand(state: AppState): AppState {
  if (!state.errand) return state;
  const { entered, take } = state.errand.waiting;
  return withSetup({ ...state, errand: undefined, take, notice: undefined }, entered);
}

/** Back to the person's own setup and an empty take: the demo's span must never explain another sound. */
function withoutDemo(state: AppState): AppState {
  if (!state.ownEntered) return state;
  return withSetup({ ...state, take: undefined, ownEntered: undefined }, state.ownEntered);
}

/** Listening goes on with the plucks that the microphone gave before, or that are to be decided on; another source begins anew. */
function takeFor({ take, deciding }: AppState, began: Extract<AppEvent, { kind: 'listening-began' }>): Take {
  const { source, sampleRateHz, processing } = began;
  if (take && source === 'microphone' && (take.source === 'microphone' || deciding)) {
    return { ...take, sampleRateHz, processing: worseProcessing(take.processing, processing), missed: [] };
  }
  return { source, sampleRateHz, processing, plucks: [], missed: [], notes: [] };
}

/** While listening, the emptied take keeps what is known of its source. */
const startedOver = ({ take, activity }: AppState): Take | undefined =>
  take && activity.kind === 'listening' ? { ...take, plucks: [], touched: undefined, refused: undefined, missed: [] } : undefined;

function heardBy(state: AppState, event: HeardEvent): AppState {
  const { activity, take } = state;
  if (activity.kind !== 'listening' || !take || !counts(activity, event)) return state;
  const next = { ...state, activity: { ...activity, ...hearingAfter(activity, event) } };
  if (event.kind === 'pluck' && state.deciding) return withTake({ ...next, deciding: undefined }, heardTouched(take, event));
  return event.kind === 'pluck' || event.kind === 'no-pluck' ? withTake(next, heard(take, event)) : next;
}

/** A recording of the deciding pluck: the first of its plucks counts, and where there is none the question stays open. */
function decidedBy(state: AppState, take: Take, { events }: Extract<AppEvent, { kind: 'recording-heard' }>): AppState {
  const touched = events.find((event) => event.kind === 'pluck');
  if (touched) return withTake({ ...state, deciding: undefined }, heardTouched(take, touched));
  return withTake(state, events.reduce(heard, take));
}
