// @ts-expect-error the library says nothing of its types
import makeQty from 'js-quantities/esm';
import type { MakeQty } from './unit-library.js';

/** In a web page, whose code is one file that cannot load more when it is asked for. */
export const unitLibrary = (): MakeQty => makeQty as MakeQty;
