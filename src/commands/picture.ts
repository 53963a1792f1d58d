/** Writes a picture beside the maker's files; never over something that is there. */
import { isThere, writeNew } from '../io.js';

/** What stands in the way, or null when it is written. */
export function writePicture(path: string, text: string): string | null {
  if (!path.endsWith('.svg')) return `--picture is ${path}: it must end in .svg.`;
  if (isThere(path)) return `${path} is there already; nothing was written. Choose another name.`;
  try {
    writeNew(path, text);
    return null;
  } catch (error) {
    return `${path} cannot be written (${(error as NodeJS.ErrnoException).code}).`;
  }
}
