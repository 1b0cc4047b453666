/** What the app needs from outside: types only, so that screens and tests meet the same contract. */

import type { KeptDocument, SectionName } from '../shared/document.ts';
import type { TakeTruth } from '../shared/take-truth.ts';
import type { Take } from './core/answer.ts';
import type { Counsel } from './core/counsel.ts';
import type { DrawnAnswer } from './core/drawn-answer.ts';
import type { InspectedSound, Inspection } from './core/inspection/inspect.ts';
import type { ListeningEvent } from './core/listening.ts';
import type { Report } from './core/logbook/report.ts';
import type { AskedPlan, PlanAnswer } from './core/machine/ask-plan.ts';
import type { AskedSecond, PlannedSecond } from './core/machine/second-position.ts';
import type { TrialQuestion, TrialRow } from './core/machine/trial.ts';
import type { PluckReading } from './core/outcome.ts';
import type { Recording, SoundProcessing } from './core/samples/recording.ts';
import type { SpanSetup } from './core/setup.ts';
import type { KnownForceTake } from './core/validation/known-take.ts';

export type { SoundBlock } from './core/samples/block.ts';

export interface InputDevice {
  readonly id: string;
  /** Empty until permission was given. */
  readonly label: string;
}

/** A microphone that is open. */
export interface OpenMicrophone {
  /** Rate of the blocks. */
  readonly sampleRateHz: number;
  /** Rate of the device itself where the browser tells it; a lower one means that nothing real arrives above its half. */
  readonly deviceSampleRateHz?: number | undefined;
  readonly device: InputDevice;
  /** What the browser really granted, whatever was asked. */
  readonly processing: SoundProcessing;
  /** Sends blocks to the port from now on. */
  sendTo(port: MessagePort): void;
  /** Called once when the microphone fails after it was opened, more often for `paused` and `silent`, which can pass. */
  onTrouble(listener: (trouble: CaptureTrouble) => void): void;
  /** Must be called from a person's gesture where the browser paused the sound. */
  resume(): Promise<void>;
  /** Releases the device. */
  close(): Promise<void>;
}

/** Why no microphone could be opened. */
export type CaptureFailure = {
  readonly kind: 'capture-failure';
  readonly why: 'blocked' | 'dismissed' | 'none' | 'in-use' | 'insecure-page' | 'not-supported' | 'device-not-found' | 'unknown';
  /** The browser's own words, for the report; may be empty. */
  readonly detail: string;
};

/** What happened to a microphone that was open. */
export type CaptureTrouble = 'gone' | 'paused' | 'resumed' | 'silent' | 'sound-again' | 'recorder-failed';

export interface Recorder {
  /** Input devices; without permission the list may be empty or without labels. Calls the listener when devices come or go. */
  devices(): Promise<readonly InputDevice[]>;
  onDevicesChanged(listener: () => void): () => void;
  open(options: { readonly deviceId?: string | undefined }): Promise<OpenMicrophone | CaptureFailure>;
}

/** Level and spectrum of the moment, some 15 times a second while sound comes in; for the eye alone. */
export interface LiveMoment {
  readonly kind: 'moment';
  /** Largest magnitude since the last moment, dB relative to full scale; −Infinity for digital silence. */
  readonly peakDbfs: number;
  /** Root mean square level, dB relative to full scale. */
  readonly levelDbfs: number;
  /** Level of the room, as far as it is known. */
  readonly roomDbfs?: number | undefined;
  readonly clipped: boolean;
  readonly binWidthHz: number;
  /** Float32Array [binCount], dB relative to a full-scale sine, up to about 3 kHz. */
  readonly levelsDbfs: Float32Array<ArrayBuffer>;
}

/** A piece of sound as it came in, about a second and a half around what began to sound. */
export interface SoundClip {
  /** Float32Array [n], full scale = 1; not modified by anyone. */
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
  /** Of the first sample, from the start of the take. */
  readonly startS: number;
}

/** `clip`: the sound of a pluck, or of what was none. */
export type HeardEvent = ListeningEvent & { readonly clip?: SoundClip | undefined };

/** `failed`: the worker itself broke; the take so far is safe with the app. */
export type AnalystEvent = HeardEvent | LiveMoment | { readonly kind: 'failed'; readonly detail: string };

export interface LiveTake {
  /** Where the sound is to be sent as `SoundBlock`s; hand it to a microphone or a replay. */
  readonly port: MessagePort;
  /** Ends the take; resolves after the last events were told. */
  end(): Promise<void>;
}

export interface Analyst {
  listen(options: { readonly sampleRateHz: number; readonly setup: SpanSetup; readonly onEvent: (event: AnalystEvent) => void }): LiveTake;
  /** A whole recording at once. Rejects with the signal's reason when aborted. */
  analyse(options: {
    readonly recording: Recording;
    readonly setup: SpanSetup;
    readonly signal?: AbortSignal | undefined;
  }): Promise<readonly HeardEvent[]>;
  /** Lays open what a sound was read from. Rejects with the signal's reason when aborted. */
  inspect(options: { readonly inspected: InspectedSound; readonly signal?: AbortSignal | undefined }): Promise<Inspection>;
}

/** Makes a sound heard again. */
export interface ClipPlayer {
  /** Resolves when it is over, or was stopped. */
  play(clip: SoundClip, signal: AbortSignal): Promise<void>;
}

/** Reckons what would help, out of the page's way. A question that is asked while another is being answered takes its place. */
export interface Counsellor {
  ask(take: Take, onAnswer: (counsel: Counsel) => void): void;
}

/** A pluck as files that others can check. */
export interface PluckFiles {
  /** 16 bits, one channel, as it came in. */
  wav(clip: SoundClip): Blob;
  /** All that was made of it, with what was told of the span. */
  json(pluck: PluckToExport): Blob;
}

export interface PluckToExport {
  readonly clip: SoundClip;
  readonly pluck: PluckReading;
  readonly setup: SpanSetup;
  readonly steadyHz: readonly number[];
  /** Name of the sound's own file. */
  readonly wavName: string;
}

/** The check by random draws, out of the page's way. */
export interface RandomDraws {
  /** Undefined where there is no force to check. Rejects with the signal's reason when aborted. */
  draw(options: {
    readonly take: Take;
    readonly seed: number;
    /** Told the share done, 0 to 1. */
    readonly onProgress: (share: number) => void;
    readonly signal: AbortSignal;
  }): Promise<DrawnAnswer | undefined>;
}

/** The span planner, out of the page's way. All reject with the signal's reason when aborted. */
export interface Planner {
  /** Undefined where the belt was not told. */
  plan(asked: AskedPlan, options: { readonly signal: AbortSignal }): Promise<PlanAnswer | undefined>;
  /** What a second position would give; undefined where none pays, and where belt or force is missing. */
  second(asked: AskedSecond, options: { readonly signal: AbortSignal }): Promise<PlannedSecond | undefined>;
  tryHere(
    question: TrialQuestion,
    options: {
      /** Told the share done, 0 to 1. */
      readonly onProgress: (share: number) => void;
      readonly signal: AbortSignal;
    },
  ): Promise<readonly TrialRow[]>;
}

/** Why a file gave no sound. `text` says in one sentence what is wrong, for WAV files with the place of the fault. */
export interface FileFailure {
  readonly kind: 'file-failure';
  readonly why: 'empty' | 'not-sound' | 'damaged' | 'cannot-decode' | 'too-long' | 'rate-out-of-range';
  readonly text: string;
}

/** `notes`: what a careful person would want to know, such as `channel 2 of 2 used`. */
export interface DecodedFile {
  readonly kind: 'decoded-file';
  readonly recording: Recording;
  readonly notes: readonly string[];
}

export interface FileDecoder {
  decode(file: File): Promise<DecodedFile | FileFailure>;
}

/** Plays a recording into a port at its own speed, as a microphone would. */
export interface Replay {
  start(options: { readonly recording: Recording; readonly port: MessagePort; readonly onEnd: () => void }): { stop(): void };
}

/** How a person says that one end of the span is held; `core/setup.ts` has what follows from it. `bench`: as when this belt was plucked under weights. */
export type EnteredEnd = 'unknown' | 'pulley' | 'idler' | 'clip' | 'bench';

/** A weighing as it was typed, kept with the belt that lay on the scale. */
export interface EnteredWeighing {
  /** As in the setup; the weighing says nothing of any other belt. */
  readonly beltId: string;
  readonly kind: 'piece' | 'loop';
  readonly length: string;
  readonly mass: string;
  readonly scaleStep: string;
  /** What came out, g/m with the half of its 95 % interval, as a person would write it. */
  readonly density: string;
}

/** A span's setup as a person typed it, units and all; an empty text is not told. */
export interface EnteredSetup {
  /** Id of a belt of the catalogue or of one that is kept; anything else is a belt whose density is typed in. */
  readonly beltId: string;
  /** Of the own belt. */
  readonly linearDensity: string;
  /** Of the own belt. */
  readonly toothPitch: string;
  readonly bendingStiffness: string;
  readonly spanLength: string;
  /** Half width of the 95 % interval of the span length. */
  readonly spanKnownTo: string;
  readonly targetFrom: string;
  readonly targetTo: string;
  /** Unit of target figures that stand alone. */
  readonly forceUnit: string;
  readonly tolerance: string;
  readonly ends: readonly [EnteredEnd, EnteredEnd];
  /** How the wide face lies; on edge where it is not told. */
  readonly lie?: 'edge' | 'flat' | undefined;
  readonly weighing?: EnteredWeighing | undefined;
  /** The machine's span that the fields were filled from. */
  readonly on?: EnteredPlace | undefined;
}

/** Ids of a machine, one of its belts, and a span of that; they may be gone by now. */
export interface EnteredPlace {
  readonly machineId: string;
  readonly machineBeltId: string;
  /** Missing where the length is of no span that the machine has. */
  readonly spanId?: string | undefined;
}

/** Remembers the last setup over a reload; where nothing can be kept, it forgets and says nothing. */
export interface SetupMemory {
  last(): EnteredSetup | undefined;
  keep(entered: EnteredSetup): void;
  forget(): void;
}

/**
 * Why what a person keeps could not be read or written. `forbidden`: the browser lets this page keep nothing. `full`: no room. `newer`: a newer
 * version of this program wrote it. `other-tab`: another tab holds an older version open. `taken-over`: a newer version runs in another tab.
 * `not-fitting`: the change itself is at fault, and was left out.
 */
export interface KeepingFailure {
  readonly kind: 'keeping-failure';
  readonly why: 'forbidden' | 'full' | 'newer' | 'other-tab' | 'taken-over' | 'not-fitting' | 'failed';
  /** The browser's own words; may be empty. */
  readonly detail: string;
}

/** An item of the store that cannot be read. It stays where it is. */
export interface DamagedItem {
  readonly section: SectionName;
  readonly id: string;
  /** Names down to the fault, such as `spans.0.lengthM`. */
  readonly path: string;
}

export interface OpenedDocument {
  readonly kind: 'opened';
  readonly document: KeptDocument;
  readonly damaged: readonly DamagedItem[];
}

/** What the browser gives this page to keep things in. */
export interface KeepingSpace {
  readonly usedBytes?: number | undefined;
  readonly quotaBytes?: number | undefined;
  /** Whether the browser promised not to clear it away by itself. */
  readonly isPersistent: boolean;
}

/** Turns what a person wants to hand over into files. */
export interface ReportFiles {
  /** Readings and events as a table; semicolons where the reader's decimal sign is a comma. */
  csv(report: Report, separator: ',' | ';'): string;
  /** All of it. */
  json(report: Report): string;
  /** Several files as one archive. */
  zip(files: readonly { readonly name: string; readonly bytes: Uint8Array }[], made: Date): Uint8Array<ArrayBuffer>;
}

/** Keeps the document in the browser, one row for each item. */
export interface DocumentArchive {
  open(): Promise<OpenedDocument | KeepingFailure>;
  /**
   * Changes what is kept, as it stands at that moment, whichever tab wrote it last. Resolves to the document once it is on the disk; where it
   * could not be kept, nothing has changed. Items that are the same object before and after are not written.
   */
  change(change: (document: KeptDocument) => KeptDocument): Promise<OpenedDocument | KeepingFailure>;
  /** Told when another tab has changed something, and when a newer version takes the store over. */
  onNews(listener: (news: OpenedDocument | KeepingFailure) => void): () => void;
  space(): Promise<KeepingSpace>;
  /** Asks the browser not to clear it away by itself; it may say no. */
  askToPersist(): Promise<boolean>;
}

/**
 * What is known of the program itself. `offline`: it works without a network. `not-offline`: it cannot here. `newer-waits`: a newer version
 * was fetched and waits for a person's word. `newer-elsewhere`: another tab uses it already.
 */
export type ProgramState = 'unknown' | 'offline' | 'not-offline' | 'newer-waits' | 'newer-elsewhere';

/** Sends `change` when the state has changed. */
export interface ProgramUpdates extends EventTarget {
  readonly state: ProgramState;
  /** Begins anew with the version that waits. */
  use(): void;
}

/** The sound of a kept take, in short. */
export interface KeptRecording {
  /** Of the take that it belongs to; that may be gone by now. */
  readonly takeId: string;
  readonly plucks: number;
  /** As it is stored. */
  readonly bytes: number;
}

/** Keeps the sound of plucks beside their takes, where a person wants that; never part of the document. */
export interface RecordingArchive {
  /** Whether sounds are kept from now on; off until a person says so. */
  readonly isOn: boolean;
  setOn(isOn: boolean): void;
  /** Takes the place of what was kept for this take. Resolves to whether it is on the disk. */
  keep(takeId: string, clips: readonly SoundClip[]): Promise<boolean>;
  list(): Promise<readonly KeptRecording[]>;
  /** Empty where nothing is kept for this take, or what is kept cannot be read. */
  clips(takeId: string): Promise<readonly SoundClip[]>;
  /** One take's, or all. */
  drop(takeId?: string): Promise<void>;
}

type SessionEnd = 'unknown' | 'pulley' | 'idler' | 'clip';

/** What is told of a take under a known weight, as typed, units and all. */
export interface SessionTexts {
  readonly density: string;
  readonly densityFrom: 'weighed' | 'stated' | 'catalogue';
  readonly ends: readonly [SessionEnd, SessionEnd];
  readonly span: string;
  readonly spanKnownTo: string;
  readonly weight: string;
}

export interface SessionTake {
  readonly name: string;
  readonly truth: TakeTruth;
  readonly known: KnownForceTake;
  readonly recording: Recording;
}

export interface KeptSession {
  readonly texts: SessionTexts;
  /** Takes that were ever taken in it, for the name of the next. */
  readonly count: number;
  readonly takes: readonly SessionTake[];
}

/** Keeps the one validation session over a reload; never part of the document. */
export interface SessionArchive {
  last(): Promise<KeptSession | undefined>;
  /** Takes the place of what was kept. Resolves to whether it is on the disk. */
  keep(session: KeptSession): Promise<boolean>;
  /** Resolves to whether nothing of it is left. */
  forget(): Promise<boolean>;
}
