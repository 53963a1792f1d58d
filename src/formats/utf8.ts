/** The bytes of a text as files hold it. */
export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
