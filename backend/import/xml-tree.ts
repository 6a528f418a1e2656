import { DOMParser, type Document } from '@xmldom/xmldom';

/**
 * A tree of XML that `reduceXml` wrote. Faults of the file were found before: one here would be ours.
 * @throws {RangeError} when the text is not well-formed
 */
export function xmlTree(xml: string): Document {
  return new DOMParser({
    locator: false,
    onError: (level, message) => {
      // Of a replacement character, which a name may well hold.
      if (level === 'warning') return;
      throw new RangeError(`reduced XML is not well-formed (${level}): ${message}`);
    },
  }).parseFromString(xml, 'text/xml');
}
