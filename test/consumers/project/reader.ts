// A program that reads survey files: the one entry that brings the readers of files along.
import * as read from "@leat/scheme/read";

import { expectSame } from "./expect-same.ts";

expectSame(Object.keys(read).length > 0, true, "scheme/read exports something");
