// The checker as it lies in the page: packed, and four bytes as five letters, of which base64 would
// need more. The letters are # to x without <, which has a meaning in a page; bundle.mjs writes them.

function bytesOf(letters: string, length: number): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(Math.ceil(letters.length / 5) * 4);
  const digit = (at: number) => {
    const code = letters.charCodeAt(at);
    return code - (code > 60 ? 36 : 35);
  };
  for (let at = 0, to = 0; at < letters.length; at += 5) {
    let value = 0;
    for (let next = at; next < at + 5; ++next) value = value * 85 + digit(next);
    out[to++] = value >>> 24;
    out[to++] = value >>> 16;
    out[to++] = value >>> 8;
    out[to++] = value;
  }
  return out.slice(0, length);
}

/** What a script element holds, unpacked. */
export async function unpacked(id: string): Promise<ArrayBuffer> {
  const holder = document.getElementById(id);
  const packed = bytesOf(holder?.textContent?.trim() ?? "", Number(holder?.dataset["bytes"]));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
  return new Response(stream).arrayBuffer();
}
