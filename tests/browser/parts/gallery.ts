/** All parts in their states on one page, to be looked at: `npx vite`, then /tests/browser/parts/gallery.html. */

import { html, render } from 'lit';
import '../../../src/ui/parts/answer-figure.ts';
import '../../../src/ui/parts/doubt-bars.ts';
import '../../../src/ui/parts/force-ruler.ts';
import '../../../src/ui/parts/grade-mark.ts';
import '../../../src/ui/parts/level-meter.ts';
import '../../../src/ui/parts/reasons-list.ts';
import '../../../src/ui/parts/remedy-ruler.ts';
import '../../../src/ui/parts/span-drawing.ts';
import '../../../src/ui/parts/spectrum-plot.ts';
import { budget, expected, humHz, peaks, pluck, reading, reasons, remedies, spectrum, target, threePlucks } from './samples.ts';

const sheet = new CSSStyleSheet();
sheet.replaceSync(`
  body { margin: 0; padding: 16px; background: var(--paper); color: var(--ink); font: var(--text-size) var(--font); }
  main { display: grid; gap: 28px; }
  h2 { margin: 0 0 8px; font-size: var(--text-size); }
  .two { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 300px), 1fr)); gap: 32px; }
  .rail { background: var(--rail); padding: 16px; inline-size: 248px; box-sizing: border-box; }
  .row { display: flex; flex-wrap: wrap; gap: 16px; }
`);
document.adoptedStyleSheets.push(sheet);

const band = 'target 6 to 9 N';
const spectrumOfPluck = spectrum();

render(
  html`<main>
    <section><h2>Figures</h2>
      <answer-figure .figure=${{ kind: 'value', value: '7.2', unit: 'N', doubt: '0.5' }} .frequency=${{ value: '81.5', unit: 'Hz', doubt: '0.3' }}></answer-figure>
      <answer-figure .figure=${{ kind: 'range', text: '2.3 to 5.7', unit: 'N' }} .frequency=${{ value: '295.6', unit: 'Hz', doubt: '0.8' }}></answer-figure>
      <answer-figure .figure=${{ kind: 'sentence', text: 'The microphone went away' }}></answer-figure>
      <answer-figure .figure=${{ kind: 'value', value: '124.7', unit: 'N', doubt: '12.5' }}></answer-figure>
    </section>
    <section class="row">
      ${(['trusted', 'doubtful', 'unusable', 'nothing'] as const).map(
        (grade) => html`<grade-mark .grade=${grade} .word=${grade === 'nothing' ? 'nothing heard' : grade} size="large"></grade-mark>
          <grade-mark .grade=${grade} .word=${grade}></grade-mark>`,
      )}
    </section>
    <section><h2>Before</h2><force-ruler .target=${target} .targetLabel=${band} targetShortLabel="target" .hint=${'Each pluck will stand here, and below them the reading'}></force-ruler></section>
    <section><h2>Three plucks</h2><force-ruler .target=${target} .targetLabel=${band} targetShortLabel="target" .plucks=${threePlucks} .reading=${reading} .predicted=${{ lowN: 7.4, highN: 8.2, valueN: 7.8, label: 'after the next turn', shortLabel: 'next' }}></force-ruler></section>
    <section><h2>Five, one left out</h2><force-ruler .target=${target} .targetLabel=${band} targetShortLabel="target" .plucks=${[...threePlucks, { ...pluck(4, 9.2, 0.6), leftOut: true }, pluck(5, 7.2, 0.5)]} .reading=${reading}></force-ruler></section>
    <section><h2>Bounds only</h2><force-ruler .target=${{ lowN: 3, highN: 5 }} .targetLabel=${'target 3 to 5 N'} boundsOnly
      .plucks=${[pluck(1, 3.9, 1.72), { highN: 5.8, valueN: 4, label: 'pluck 2', shortLabel: '2' }, { lowN: 2.4, valueN: 4.1, label: 'pluck 3', shortLabel: '3' }]}
      .reading=${{ highN: 5.7, valueN: 4, label: 'anywhere in here', shortLabel: '' }}></force-ruler></section>
    <section><h2>Two readings fit</h2><force-ruler boundsOnly .reading=${{ lowN: 22, highN: 26, valueN: 24.1, label: '24.1 N' }} .rival=${{ lowN: 5.5, highN: 6.5, valueN: 6, label: '6.0 N' }}></force-ruler></section>
    <section><h2>Frequency only</h2><force-ruler .plucks=${[{ label: 'pluck 1, 81.4 Hz' }, { label: 'pluck 2, 81.6 Hz' }]}></force-ruler></section>
    <section class="two">
      <div><h2>Spectrum</h2><spectrum-plot .spectrum=${spectrumOfPluck} .expected=${expected} .peaks=${peaks} .leftOut=${[{ frequencyHz: humHz, label: 'hum, left out' }]} floorLabel="the room before the pluck"></spectrum-plot></div>
      <div><h2>What the doubt is made of</h2><doubt-bars .groups=${budget} note="Expanded, k = 2, about 95 %."></doubt-bars></div>
    </section>
    <section class="two">
      <div><h2>Live</h2><spectrum-plot id="live" .expected=${expected}></spectrum-plot></div>
      <div><h2>Why, and what to do</h2><reasons-list .items=${reasons}></reasons-list></div>
    </section>
    <section class="two">
      <div><h2>What each would give, near 4 N</h2><remedy-ruler .target=${{ lowN: 3, highN: 5 }} .rows=${remedies} note="Reckoned for this belt under this force."></remedy-ruler></div>
      <div><remedy-ruler .rows=${remedies}></remedy-ruler></div>
    </section>
    <section class="two">
      <div><h2>Where to measure, where to pluck</h2><span-drawing variant="big" .spanLengthM=${0.18} length="180 mm" pluckLabel="pluck here, lightly" tangentLabel="tangent point"></span-drawing></div>
      <div><span-drawing variant="big" .spanLengthM=${0.06} length="60 mm" pluckLabel="pluck here, lightly" tangentLabel="tangent point"></span-drawing></div>
      <div><span-drawing variant="big" .length=${''} pluckLabel="pluck here, lightly" marked></span-drawing></div>
    </section>
    <section class="row">
      <div class="rail"><span-drawing .spanLengthM=${0.18} length="180 mm" ringing></span-drawing></div>
      <div class="rail"><span-drawing .spanLengthM=${0.045} length="45 mm"></span-drawing></div>
      <div class="rail"><level-meter .peakDbfs=${-52} .roomDbfs=${-60} clipsLabel="clips"></level-meter><p></p><level-meter .peakDbfs=${0} .roomDbfs=${-60} clipped compact></level-meter></div>
    </section>
  </main>`,
  document.body,
);

document.querySelector<HTMLElementTagNameMap['spectrum-plot']>('#live')?.showLive({
  binWidthHz: spectrumOfPluck.binWidthHz,
  levelsDbfs: spectrumOfPluck.levelsDbfs.map((level) => level - 8),
});
