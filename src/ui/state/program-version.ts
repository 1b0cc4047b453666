/** The version of the program, for what is kept: an answer says which program computed it. */

import { version } from '../../../package.json' with { type: 'json' };

export const PROGRAM_VERSION = version;
