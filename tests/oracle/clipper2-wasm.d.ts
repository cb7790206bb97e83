/**
 * The part of clipper2-wasm 0.4 that the tests use. The package names a types file that it does not contain.
 */
declare module 'clipper2-wasm' {
  /** Points as consecutive x, y, z; z is passed through and not read. */
  interface Path {
    assign(coordinates: Float64Array): void;
    delete(): void;
  }
  interface Paths {
    push_back(path: Path): void;
    delete(): void;
  }
  interface Clipper {
    readonly PathD: { new (): Path };
    readonly PathsD: { new (): Paths };
    readonly FillRule: { readonly NonZero: object };
    DifferenceD(subjects: Paths, clips: Paths, fillRule: object, decimals: number): Paths;
    AreaPathsD(paths: Paths): number;
  }
  const start: () => Promise<Clipper>;
  export default start;
}
