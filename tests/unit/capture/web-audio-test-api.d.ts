/** The library has no types; declared is what the tests of the capture graph use. */
declare module 'web-audio-test-api' {
  interface GraphNode {
    readonly name: string;
    readonly inputs: readonly GraphNode[];
  }
  const WebAudioTestAPI: {
    readonly AudioContext: new () => AudioContext & { toJSON(): GraphNode };
    readonly Event: new (type: string) => Event;
    readonly MediaStream: { readonly prototype: object };
    setState(states: Readonly<Record<string, string>>): void;
  };
  export default WebAudioTestAPI;
}
