/** What `npm start -- --lan` tells: where to go, what the browser will warn about, and what that means. */

export const noNetwork = `This computer is in no network, so that no other device could find it.
Join a network and run the same command again, or run npm start for this computer alone.
`;

/** @param code  the first address as a code for a phone's camera, in characters of the terminal */
export const lanWords = ({ addresses, port, code, fingerprint }) => `
Spanwright is ready for the devices of your network:

${addresses.map((address) => `  https://${address}:${port}/`).join('\n')}

${code}

The browser will warn that the connection is not private: the certificate was made on this computer, and no authority
has signed it. Look that the address is the one above, then go on (often behind 'Advanced' or 'Details').
Whoever wants to be sure compares the certificate's SHA-256 fingerprint with this one:

  ${fingerprint.match(/.{1,48}/gu).join('\n  ')}

Do this only in a network that you trust: every device in it can open the page. What is measured stays on the device
that measures; nothing is sent here.
A page behind such a warning cannot be kept for work without a network: the phone needs this computer each time it
opens the page. On this computer itself, and on a web server with a certificate that the phone trusts, it works offline.

Stop it with Ctrl+C.
`;
