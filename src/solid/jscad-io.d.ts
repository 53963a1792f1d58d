/** The part of @jscad/io used here; the package has no types of its own. */
declare module '@jscad/io' {
  type Polygon = { readonly vertices: readonly (readonly [number, number, number])[] };
  type Geometry = { readonly polygons: readonly Polygon[] };
  const io: {
    readonly deserializers: {
      stl(
        options: { readonly filename: string; readonly output: 'geometry' },
        stl: ArrayBuffer,
      ): Geometry | readonly Geometry[];
    };
  };
  export default io;
}
