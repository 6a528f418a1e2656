import { inflateSync, zstdDecompressSync } from 'node:zlib';
import { addDecoder, BaseDecoder } from 'geotiff';
import { LARGEST_BLOCK_BYTES } from './check-tiff.ts';
import { unpackLzw } from './unpack-lzw.ts';

const LIMIT = { maxOutputLength: LARGEST_BLOCK_BYTES } as const;

/** As an ArrayBuffer of its own: the library views it from its beginning. */
function own(bytes: Uint8Array): ArrayBuffer {
  return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
}

class Deflate extends BaseDecoder {
  override decodeBlock(buffer: ArrayBufferLike): ArrayBuffer {
    return own(inflateSync(new Uint8Array(buffer), LIMIT));
  }
}

class Zstandard extends BaseDecoder {
  override decodeBlock(buffer: ArrayBufferLike): ArrayBuffer {
    return own(zstdDecompressSync(new Uint8Array(buffer), LIMIT));
  }
}

class Lzw extends BaseDecoder {
  override decodeBlock(buffer: ArrayBufferLike): ArrayBuffer {
    return own(unpackLzw(new Uint8Array(buffer), LARGEST_BLOCK_BYTES));
  }
}

/** Puts unpackers that stop at a limit in place of the library's own, which would fill the memory from a small file. */
export function limitDecoders(): void {
  addDecoder([8, 32946], async () => Deflate, undefined, false);
  addDecoder(5, async () => Lzw, undefined, false);
  addDecoder(50000, async () => Zstandard, undefined, false);
}
