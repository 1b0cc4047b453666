/** The page's address after the `#`: which place, what in it, and what was asked along with it. */

import type { ReactiveController, ReactiveControllerHost } from 'lit';

export interface Route {
  /** First part, such as `machines`; empty where nothing stands there. */
  readonly place: string;
  /** What follows, decoded: ids and names of pages. */
  readonly rest: readonly string[];
  readonly query: URLSearchParams;
}

export function routeOf(hash: string): Route {
  const [path = '', query = ''] = hash.replace(/^#\/?/u, '').split('?', 2);
  const [place = '', ...rest] = path
    .split('/')
    .filter((part) => part !== '')
    .map(decoded);
  return { place, rest, query: new URLSearchParams(query) };
}

/** `#/machines/ID/plan`; each part may hold any text. */
export const hrefOf = (...parts: readonly string[]): string => `#/${parts.map(encodeURIComponent).join('/')}`;

/** The planner, as a page of the machine that the setup names, where it names one. */
export const planHref = ({ on }: { readonly on?: { readonly machineId: string } | undefined }): string =>
  on ? hrefOf('machines', on.machineId, 'plan') : hrefOf('machines', 'plan');

/** A link may have been cut or mistyped: what is no encoding stands for itself. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** Follows the address; its user is drawn anew when it changes. */
export class CurrentRoute implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #onChange: ((route: Route) => void) | undefined;
  value: Route = routeOf(location.hash);

  constructor(host: ReactiveControllerHost, onChange?: (route: Route) => void) {
    this.#host = host;
    this.#onChange = onChange;
    host.addController(this);
  }

  hostConnected(): void {
    this.value = routeOf(location.hash);
    window.addEventListener('hashchange', this.#changed);
  }

  hostDisconnected(): void {
    window.removeEventListener('hashchange', this.#changed);
  }

  readonly #changed = (): void => {
    this.value = routeOf(location.hash);
    this.#onChange?.(this.value);
    this.#host.requestUpdate();
  };
}
