// Reads barcodes in pictures, away from the page.
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";

declare const SCANNER: string;

const LABELS = ["QRCode", "Code128", "Code39", "DataMatrix", "PDF417"] as const; // what labels of units and vehicles bear

prepareZXingModule({ overrides: { locateFile: () => new URL(SCANNER, self.location.href).href } });

self.onmessage = async ({ data }: MessageEvent<ImageData>) => {
  const found = await readBarcodes(data, { formats: [...LABELS], tryHarder: true, maxNumberOfSymbols: 4 });
  self.postMessage(found.filter((one) => one.isValid).map((one) => one.text));
};
