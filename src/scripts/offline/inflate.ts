/** Bytes packed with gzip as they were; other bytes as they are, for some servers inflate on the way what they recognise as gzip. */
export async function inflate(packed: Blob): Promise<Blob> {
  const [first, second] = new Uint8Array(await packed.slice(0, 2).arrayBuffer());
  if (first !== 0x1f || second !== 0x8b) return packed;
  return new Response(packed.stream().pipeThrough(new DecompressionStream("gzip"))).blob();
}
