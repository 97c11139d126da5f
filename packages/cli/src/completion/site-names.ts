// Apart from the rest of its room, so that a shell waits for the reading of YAML alone.
export { namesInFile } from '@wintergap/site';
