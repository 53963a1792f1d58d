/** What is used of pdfmake, which comes without types. */
declare module 'pdfmake/js/Printer.js' {
  export type Files = {
    readonly existsSync: (path: string) => boolean;
    readonly readFileSync: (path: string) => Buffer;
  };
  export type Printer = {
    /** There once a document is being made. */
    readonly pdfKitDoc: InstanceType<typeof import('pdfkit')>;
    readonly createPdfKitDocument: (
      definition: object,
      options?: { readonly tableLayouts?: object },
    ) => Promise<InstanceType<typeof import('pdfkit')>>;
  };
  type PrinterClass = new (
    fonts: object,
    files: Files,
    urls: { readonly resolve: () => void; readonly resolved: () => Promise<void> },
    mayRead: (path: string) => boolean,
  ) => Printer;
  /** Node gives the whole of a CommonJS module as its default, tools that know its marks the default in it. */
  const module: PrinterClass | { readonly default: PrinterClass };
  export default module;
}
