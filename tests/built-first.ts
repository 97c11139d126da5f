// Before tests that run on the built packages: a stale build is refused, so that no test passes on one.
export { mustBeBuilt as setup } from './built-program.js';
