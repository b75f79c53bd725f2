import { describe, expect, it } from "vitest";
import { jsonDocument, jsonDocumentBytes } from "../../../src/outputs/index.js";
import { ByteSink, Piece, TextSink } from "../../../src/outputs/json/sinks.js";
import { point, TORQUE_OPEN } from "../fake-findings.js";
import { fakeScreening } from "../fake-screening.js";

/** Copies what is handed out, as whoever writes it has to have written it by then. */
function bytesOf(pieces: Iterable<Uint8Array>): string {
  return Buffer.concat([...pieces].map((piece) => Buffer.from(piece))).toString("utf8");
}

function* copied(pieces: Iterable<Uint8Array>): Iterable<Uint8Array> {
  for (const piece of pieces) yield piece.slice();
}

describe("the document in bytes", () => {
  it("is the text in UTF-8, over many pieces of memory", () => {
    const names = ["plain", "Kühlwasserpumpe 3", "\u{1d49c} \u2028", "ж".repeat(300), 'a "quoted" \\ name', ""];
    const points = Array.from({ length: 3000 }, (_, i) => ({
      ...point(i, "warn", [TORQUE_OPEN]),
      machine: names[i % names.length] ?? null,
      id: i % 7 === 0 ? null : `0c9d3a52-7b1e-5f0a-8c44-${String(i).padStart(12, "0")}`,
    }));
    const text = [...jsonDocument(fakeScreening(points))].join("");
    expect(text.length).toBeGreaterThan(1_000_000);
    expect(bytesOf(copied(jsonDocumentBytes(fakeScreening(points)))) === text).toBe(true);
  });

  it("keeps what was taken while two more pieces are made", () => {
    const sink = new ByteSink();
    const taken = ["one", "two", "three"].map((text) => {
      sink.text(text);
      return sink.take();
    });
    expect(taken.map((bytes) => new TextDecoder().decode(bytes))).toEqual(["one", "two", "three"]);
  });

  it("makes room for what is longer than its memory", () => {
    const [bytes, text] = [new ByteSink(), new TextSink()];
    for (const sink of [bytes, text]) {
      sink.text("ä".repeat(200_000));
      sink.piece(new Piece("€".repeat(200_000)));
      sink.text("é");
    }
    expect(new TextDecoder().decode(bytes.take()) === text.take()).toBe(true);
  });
});
