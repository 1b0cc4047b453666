/** The screen is held while the page listens, let go when it stops, and asked for again when the page comes back. */

import { describe, expect, it } from 'vitest';
import { KeepAwake } from '../../../../src/ui/state/keep-awake.ts';
import { initialState } from '../../../../src/ui/state/state.ts';
import { Store } from '../../../../src/ui/state/store.ts';

const settled = () => new Promise((resolve) => setTimeout(resolve));

function bench({ refuses = false, lacks = false } = {}) {
  const store = new Store(initialState());
  const held: { released: boolean }[] = [];
  let visible = true;
  let tell = () => {};
  const hold = async () => {
    if (refuses) throw new DOMException('no', 'NotAllowedError');
    const one = { released: false };
    held.push(one);
    return {
      release: async () => {
        one.released = true;
      },
    };
  };
  new KeepAwake({
    store,
    screen: {
      hold: lacks ? undefined : hold,
      isVisible: () => visible,
      onVisible: (listener) => {
        tell = listener;
      },
    },
  });
  const show = (now: boolean) => {
    visible = now;
    tell();
  };
  const listen = () => store.dispatch({ kind: 'listening-began', source: 'microphone', sampleRateHz: 48_000 });
  const stop = () => store.dispatch({ kind: 'listening-ended' });
  return { store, held, show, listen, stop };
}

describe('the screen', () => {
  it('is held while listening, once, and let go after', async () => {
    const { held, listen, stop, store } = bench();
    store.dispatch({ kind: 'setup-entered', change: { spanLength: '180' } });
    expect(held.length).toBe(0);
    listen();
    store.dispatch({ kind: 'obstacle', obstacle: 'silent' });
    await settled();
    expect(held).toEqual([{ released: false }]);
    stop();
    await settled();
    expect(held).toEqual([{ released: true }]);
  });

  it('is asked for again when the page comes back', async () => {
    const { held, listen, show } = bench();
    listen();
    show(false);
    expect(held.length).toBe(1);
    show(true);
    await settled();
    expect(held.length).toBe(2);
  });

  it('is not asked for while the page is hidden, nor when it comes back and nobody listens', async () => {
    const { held, listen, stop, show } = bench();
    show(false);
    listen();
    expect(held.length).toBe(0);
    stop();
    show(true);
    await settled();
    expect(held.length).toBe(0);
  });

  it.each([{ refuses: true }, { lacks: true }])('may be refused: listening goes on', async (options) => {
    const { store, listen, stop } = bench(options);
    listen();
    await settled();
    expect(store.state.activity.kind).toBe('listening');
    stop();
    await settled();
  });
});
