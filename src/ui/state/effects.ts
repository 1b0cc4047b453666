/** What a person can do that reaches outside the page: microphone, files, demo. Each act ends the one before; what comes too late is dropped. */

import type { DrawnAnswer } from '../../core/drawn-answer.ts';
import type { InspectedSound, Inspection } from '../../core/inspection/inspect.ts';
import type { Recording } from '../../core/samples/recording.ts';
import type {
  Analyst,
  AnalystEvent,
  CaptureFailure,
  CaptureTrouble,
  ClipPlayer,
  Counsellor,
  EnteredSetup,
  FileDecoder,
  LiveTake,
  OpenMicrophone,
  Planner,
  PluckFiles,
  RandomDraws,
  Recorder,
  Replay,
  SetupMemory,
  SoundClip,
} from '../../ports.ts';
import { followCounsel } from './counsel.ts';
import type { LiveMoments } from './live.ts';
import { roomHeard } from './room-heard.ts';
import type { SoundTap } from './sound-tap.ts';
import type { AppEvent } from './state.ts';
import type { Store } from './store.ts';
import { soundsOf } from './take.ts';

export interface Outside {
  readonly recorder: Recorder;
  readonly analyst: Analyst;
  readonly draws: RandomDraws;
  readonly counsellor: Counsellor;
  readonly player: ClipPlayer;
  readonly pluckFiles: PluckFiles;
  readonly planner: Planner;
  readonly decoder: FileDecoder;
  readonly replay: Replay;
  readonly memory: SetupMemory;
  readonly demo: () => Promise<{ readonly recording: Recording; readonly entered: EnteredSetup }>;
}

/** What goes on outside until it is ended. */
interface Act {
  over: boolean;
  microphone?: OpenMicrophone | undefined;
  playing?: { stop(): void } | undefined;
  take?: LiveTake | undefined;
  readonly aborting: AbortController;
}

/** Whoever checks twice is to see the same. */
const SEED = 1;

export class Effects {
  readonly #store: Store;
  readonly #live: LiveMoments;
  readonly #outside: Outside;
  #act: Act | undefined;
  #kept: EnteredSetup;

  constructor(options: { readonly store: Store; readonly live: LiveMoments; readonly outside: Outside }) {
    this.#store = options.store;
    this.#live = options.live;
    this.#outside = options.outside;
    this.#kept = this.#store.state.entered;
    this.#outside.recorder.onDevicesChanged(() => void this.findDevices());
    this.#store.addEventListener('change', () => this.#remember());
    followCounsel(this.#store, options.outside.counsellor);
  }

  async findDevices(): Promise<void> {
    this.#tell({ kind: 'devices-found', devices: await this.#outside.recorder.devices() });
  }

  async listen(): Promise<void> {
    await this.endErrand();
    await this.#listen();
  }

  /** Listens for another place, with that place's own setup; what was heard before waits until `endErrand`. */
  async listenFor(owner: string, entered: EnteredSetup, tap?: SoundTap): Promise<void> {
    await this.#beginErrand(owner, entered);
    await this.#listen(tap);
  }

  /** @param tap  hears the sound as well */
  async openRecordingFor(owner: string, entered: EnteredSetup, file: File, tap?: SoundTap): Promise<void> {
    await this.#beginErrand(owner, entered);
    await this.#openRecording(file, tap);
  }

  /** Setup and take are the person's own again. */
  async endErrand(): Promise<void> {
    if (!this.#store.state.errand) return;
    await this.stop();
    this.#tell({ kind: 'errand-ended' });
  }

  async #beginErrand(owner: string, entered: EnteredSetup): Promise<void> {
    await this.stop();
    this.#tell({ kind: 'errand-began', owner, entered });
  }

  async #listen(tap?: SoundTap): Promise<void> {
    const act = await this.#begin();
    this.#tell({ kind: 'microphone-asked' });
    const opened = await this.#outside.recorder.open({ deviceId: this.#store.state.deviceId });
    if (act.over) return 'kind' in opened ? undefined : opened.close();
    if ('kind' in opened) {
      this.#act = undefined;
      return this.#tell({ kind: 'capture-failed', failure: opened });
    }
    act.microphone = opened;
    const { sampleRateHz, processing, device } = opened;
    act.take = this.#hear(act, sampleRateHz);
    this.#tell({ kind: 'listening-began', source: 'microphone', sampleRateHz, processing, device });
    opened.onTrouble((trouble) => this.#troubled(act, trouble));
    opened.sendTo(tap ? tap.begin(sampleRateHz, act.take.port) : act.take.port);
    await this.findDevices(); // their names are told only now
  }

  /** Ends what goes on. A pluck that still rings is heard out first. */
  async stop(): Promise<void> {
    const { kind } = this.#store.state.activity;
    const act = this.#act;
    if (!act) return;
    if (kind === 'asking') {
      act.over = true;
      this.#act = undefined;
      return this.#tell({ kind: 'asking-dropped' });
    }
    await this.#end(act);
  }

  async playDemo(): Promise<void> {
    await this.endErrand();
    const act = await this.#begin();
    this.#tell({ kind: 'demo-asked' });
    const made = await this.#outside.demo().catch(() => undefined);
    if (act.over) return;
    if (!made) {
      this.#act = undefined;
      return this.#tell({ kind: 'listening-ended', lost: 'analysis-failed' });
    }
    const { recording, entered } = made;
    this.#tell({ kind: 'demo-prepared', entered });
    act.take = this.#hear(act, recording.sampleRateHz);
    this.#tell({ kind: 'listening-began', source: 'demo', sampleRateHz: recording.sampleRateHz, processing: 'untouched' });
    act.playing = this.#outside.replay.start({ recording, port: act.take.port, onEnd: () => void this.#end(act) });
  }

  async openRecording(file: File): Promise<void> {
    await this.endErrand();
    await this.#openRecording(file);
  }

  async #openRecording(file: File, tap?: SoundTap): Promise<void> {
    const act = await this.#begin();
    const fileName = file.name;
    this.#tell({ kind: 'file-opening', fileName });
    const said = await this.#readThrough(file, act.aborting.signal, tap);
    if (act.over) return;
    this.#act = undefined;
    this.#tell(said);
  }

  async #readThrough(file: File, signal: AbortSignal, tap?: SoundTap): Promise<AppEvent> {
    const fileName = file.name;
    const decoded = await this.#outside.decoder.decode(file);
    if (decoded.kind === 'file-failure') return { kind: 'file-failed', failure: decoded, fileName };
    const { recording, notes } = decoded;
    tap?.hear(recording);
    const { sampleRateHz, processing } = recording;
    try {
      const events = await this.#outside.analyst.analyse({ recording, setup: this.#store.state.understood.setup, signal });
      return { kind: 'recording-heard', fileName, events, notes, sampleRateHz, processing };
    } catch {
      return { kind: 'listening-ended', lost: 'analysis-failed' };
    }
  }

  /** Checks the reading by random draws; undefined where there is no force. Rejects when aborted and where the worker breaks. */
  async checkByDraws(options: { onProgress: (share: number) => void; signal: AbortSignal }): Promise<DrawnAnswer | undefined> {
    const { take, understood } = this.#store.state;
    if (!take) return undefined;
    return this.#outside.draws.draw({ take: soundsOf(take, understood.setup), seed: SEED, ...options });
  }

  /** The next pluck decides between two numberings; listens for it where nothing is heard yet. */
  async decideOctave(): Promise<void> {
    this.#tell({ kind: 'deciding-asked' });
    if (this.#store.state.deciding && this.#store.state.activity.kind === 'idle') await this.listen();
  }

  /** Rejects when aborted and where the worker breaks. */
  inspect(inspected: InspectedSound, signal: AbortSignal): Promise<Inspection> {
    return this.#outside.analyst.inspect({ inspected, signal });
  }

  /** Resolves when it has been heard, or was stopped. */
  play(clip: SoundClip, signal: AbortSignal): Promise<void> {
    return this.#outside.player.play(clip, signal);
  }

  get pluckFiles(): PluckFiles {
    return this.#outside.pluckFiles;
  }

  /** What the planner's page asks, each in a worker of its own. */
  get planner(): Planner {
    return this.#outside.planner;
  }

  /** Some seconds of the room as the chosen microphone hears it; ends what was listened to before. */
  async recordRoom(options: {
    seconds: number;
    onProgress: (share: number) => void;
    signal: AbortSignal;
  }): Promise<Recording | CaptureFailure> {
    await this.stop();
    const opened = await this.#outside.recorder.open({ deviceId: this.#store.state.deviceId });
    if ('kind' in opened) return opened;
    try {
      return await roomHeard(opened, options);
    } finally {
      await opened.close();
    }
  }

  /** Must be called from a person's gesture. */
  async resume(): Promise<void> {
    await this.#act?.microphone?.resume();
  }

  async leaveDemo(): Promise<void> {
    await this.stop();
    this.#tell({ kind: 'demo-left' });
  }

  #tell(event: AppEvent): void {
    this.#store.dispatch(event);
  }

  async #begin(): Promise<Act> {
    if (this.#act) await this.stop();
    const act: Act = { over: false, aborting: new AbortController() };
    this.#act = act;
    return act;
  }

  #hear(act: Act, sampleRateHz: number): LiveTake {
    const { setup } = this.#store.state.understood;
    return this.#outside.analyst.listen({ sampleRateHz, setup, onEvent: (event) => this.#analysed(act, event) });
  }

  #analysed(act: Act, event: AnalystEvent): void {
    if (this.#act !== act) return;
    if (event.kind === 'moment') this.#live.show(event);
    else if (event.kind === 'failed') void this.#end(act, 'analysis-failed');
    else this.#tell({ kind: 'heard', event });
  }

  #troubled(act: Act, trouble: CaptureTrouble): void {
    if (this.#act !== act || act.over) return;
    if (trouble === 'gone' || trouble === 'recorder-failed') void this.#end(act, trouble);
    else this.#tell({ kind: 'obstacle', obstacle: trouble === 'paused' || trouble === 'silent' ? trouble : undefined });
  }

  async #end(act: Act, lost?: 'gone' | 'recorder-failed' | 'analysis-failed'): Promise<void> {
    if (act.over) return;
    act.over = true;
    act.aborting.abort();
    act.playing?.stop();
    await act.microphone?.close();
    if (lost !== 'analysis-failed') await act.take?.end();
    if (this.#act !== act) return;
    this.#act = undefined;
    this.#live.show(undefined);
    this.#tell({ kind: 'listening-ended', lost });
  }

  /** The demo's setup, and that of an errand, is not the person's and is not kept. */
  #remember(): void {
    const { entered, ownEntered, errand } = this.#store.state;
    const own = errand?.waiting.entered ?? ownEntered ?? entered;
    if (own === this.#kept) return;
    this.#kept = own;
    this.#outside.memory.keep(own);
  }

  /** What stands in the fields stays there while the page is open, and is kept again only once it changes. */
  forgetSetup(): void {
    const { entered, ownEntered, errand } = this.#store.state;
    this.#kept = errand?.waiting.entered ?? ownEntered ?? entered;
    this.#outside.memory.forget();
  }
}
