/** Which version of the program this is; it stands with every answer that is kept. */

export const PROGRAM_VERSION = '0.1.0';
