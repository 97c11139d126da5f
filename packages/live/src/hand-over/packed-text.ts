/** The text that was packed with raw deflate and written in base64; in a browser. */
export async function textOfPacked(packed: string): Promise<string> {
  const bytes = Uint8Array.from(atob(packed.trim()), (letter) => letter.charCodeAt(0));
  const unpacked = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw'));
  return new Response(unpacked).text();
}
