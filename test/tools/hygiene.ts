// The text of the repository stands on its own: it names no one machine and tells nothing of how it came about.
import type { TextFile } from "./tree.ts";

/** Words are broken by `·`, so that this file does not hold what it looks for. */
function anyOf(...words: string[]): string {
  return `(?:${words.join("|").replaceAll("·", "")})`;
}

/** What may not stand in any file, and why. */
const forbidden: [pattern: RegExp, why: string][] = [
  [
    new RegExp(`(?:^|[\\s"'\`(=:])/${anyOf("wo·rk", "fa·rm", "ro·ot")}/`, "u"),
    "is a path of one machine",
  ],
  [new RegExp(`/${anyOf("ho·me", "Us·ers")}/\\w+/`, "u"), "is a path of one machine"],
  [/\b[A-Z]:\\\w+\\/u, "is a path of one machine"],
  [
    new RegExp(`https?://${anyOf("regis·try", "d·eb", "secu·rity")}\\.`, "iu"),
    "names a registry host",
  ],
  [new RegExp(`\\b${anyOf("npm·js")}\\.(?:org|com)\\b`, "iu"), "names a registry host"],
  [
    new RegExp(
      `\\b${anyOf("Clau·de", "Anth·ropic", "Chat·GPT", "Open·AI", "Cop·ilot", "L·LMs?", "language mo·dels?", "A·I assistants?")}\\b`,
      "iu",
    ),
    "names a writing tool",
  ],
  [
    new RegExp(
      `\\b${anyOf("tran·script", "seed (?:d·oc|vi·deo|fi·le)", "C·EO", "steering re·po", "developer ses·sion", "helper ses·sion", "sub·agents?", "co-auth·ored-by")}\\b`,
      "iu",
    ),
    "speaks of how the work is organised",
  ],
  [/\bissues? #?\d+/iu, "cites the number of an issue"],
  [new RegExp(`^${anyOf("<<<·<<<<", ">>>·>>>>")} `, "u"), "is left of a merge"],
];

/**
 * Looks for words that may not be in the repository.
 *
 * @param files - texts; a file that holds a null character is taken as binary and passed over
 * @returns one line for each find: file, line, why
 */
export function hygieneProblems(files: TextFile[]): string[] {
  return files
    .filter(({ text }) => !text.includes("\0"))
    .flatMap(({ path, text }) =>
      text
        .split("\n")
        .flatMap((line, index) =>
          forbidden
            .filter(([pattern]) => pattern.test(line))
            .map(([, why]) => `${path}:${index + 1}: ${why}`),
        ),
    );
}
