/** Registers the service worker, and tells when the page works without a network and when a newer version waits. */

import type { ProgramState, ProgramUpdates } from '../ports.ts';

export class ServiceWorkerUpdates extends EventTarget implements ProgramUpdates {
  #state: ProgramState = 'unknown';
  #registration: ServiceWorkerRegistration | undefined;
  #asked = false;

  get state(): ProgramState {
    return this.#state;
  }

  /** A page that is not secure, or was built for developers, has no service worker. */
  async start(address: string): Promise<void> {
    const { serviceWorker } = navigator as Partial<Navigator>;
    if (!serviceWorker) {
      this.#become('not-offline');
      return;
    }
    const wasControlled = serviceWorker.controller !== null;
    serviceWorker.addEventListener('controllerchange', () => this.#taken(wasControlled));
    try {
      this.#registration = await serviceWorker.register(address, { scope: './' });
    } catch {
      this.#become('not-offline');
      return;
    }
    this.#watch(this.#registration);
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') void this.#registration?.update().catch(() => {}); // without a network there is none
    });
    await serviceWorker.ready;
    if (this.#state === 'unknown') this.#become('offline');
  }

  use(): void {
    this.#asked = true;
    this.#registration?.waiting?.postMessage('use-now');
  }

  #watch(registration: ServiceWorkerRegistration): void {
    const waits = () => {
      if (registration.waiting && registration.active) this.#become('newer-waits');
    };
    waits();
    registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', waits));
  }

  /** This page asked for the newer version and begins anew with it; another tab's wish leaves this page as it is, with a word. */
  #taken(wasControlled: boolean): void {
    if (this.#asked) location.reload();
    else if (wasControlled) this.#become('newer-elsewhere');
  }

  #become(state: ProgramState): void {
    this.#state = state;
    this.dispatchEvent(new Event('change'));
  }
}
