/**
 * The library that every schema here is written with, told to compile no code: it would try so as the first schema is made, and the page's
 * content security policy forbids that. Imported from here alone, so that it is told before any schema exists, in the page and in its workers.
 */
import { z } from 'zod';

z.config({ jitless: true });

export { z };
