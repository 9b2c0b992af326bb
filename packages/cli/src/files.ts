import { readFileSync, statSync } from "node:fs";

/** Largest file that is read at all, in bytes; the reader has a smaller limit of its own. */
const largestFile = 64 * 1024 * 1024;

/** What keeps a file from being read, by the code of the system's error. */
const faults: Readonly<Record<string, readonly [code: string, message: string]>> = {
  ENOENT: ["file/missing", "there is no such file. Check its name and folder."],
  EISDIR: ["file/folder", "this is a folder. Name the file in it."],
  EACCES: ["file/closed", "this file may not be read. Check its permissions."],
  ERR_ENCODING_INVALID_ENCODED_DATA: [
    "file/not-text",
    "this is not text in UTF-8. Save it as plain text.",
  ],
};

/**
 * Reads a text file.
 *
 * @param file - Its name.
 * @returns Its text, or what keeps it from being read.
 */
export function readText(file: string): string | { code: string; message: string } {
  try {
    const { size } = statSync(file);
    if (size > largestFile) {
      return {
        code: "file/too-large",
        message: `the file has ${size} bytes, more than any survey or record. Is it the right file?`,
      };
    }
    return new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(file));
  } catch (error) {
    const known = faults[(error as { code?: string }).code ?? ""];
    if (!known) throw error;
    return { code: known[0], message: known[1] };
  }
}
