/** What is used of subset-font, which comes without types. */
declare module 'subset-font' {
  export default function subsetFont(
    face: Buffer,
    text: string,
    options: { readonly targetFormat: 'truetype' | 'woff2'; readonly noHinting?: boolean },
  ): Promise<Uint8Array>;
}
