package org.epochrome.robustness;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/** Damages files in the ways that break readers; the same seed gives the same damage. */
final class Mutator {
    private static final int HEAD_BYTES = 600;
    private static final int CARD_BYTES = 80;
    private static final int PNG_SIGNATURE_BYTES = 8;
    private static final long[] NUMBERS = {
        0,
        1,
        -1,
        2,
        3,
        8,
        127,
        128,
        255,
        256,
        32767,
        32768,
        65535,
        65536,
        0x7fffffffL,
        0x80000000L,
        0xffffffffL,
        Long.MAX_VALUE,
        Long.MIN_VALUE
    };
    private static final List<String> WORDS = List.of(
            "0",
            "-1",
            "1.5",
            "1e999999999",
            "1e-999999999",
            "NaN",
            "Infinity",
            "9".repeat(400),
            "null",
            "true",
            "[]",
            "{}",
            "[".repeat(3000),
            "\"\"",
            "\"\u001b[2J\"",
            "\"\u202e\"",
            "'",
            "\"",
            "\ufffd",
            "\u0000",
            "../../x",
            "T",
            "2031-05-02T21:14:05Z",
            "-999999999-01-01T00:00:00Z",
            "+999999999-12-31T23:59:59Z",
            "P1D",
            "PT-1S",
            "\n",
            ",,,,,,",
            ";",
            "#");
    private static final Pattern TOKEN = Pattern.compile("[-+.\\w:]+|\"[^\"]*\"|\\p{Punct}");

    private final Random random;

    Mutator(long seed) {
        random = new Random(seed);
    }

    /**
     * A damaged copy.
     *
     * @param other another file, parts of which may be put in
     */
    byte[] mutated(byte[] whole, byte[] other) {
        boolean gzip = begins(whole, 0x1f, 0x8b);
        if (gzip && random.nextBoolean()) {
            return packed(damaged(unpacked(whole), other));
        }
        byte[] damaged = damaged(whole, other);
        return begins(whole, 0x89, 'P', 'N', 'G') && random.nextInt(4) > 0 ? withRightSums(damaged) : damaged;
    }

    private byte[] damaged(byte[] whole, byte[] other) {
        byte[] bytes = whole.clone();
        int times = random.nextBoolean() ? 1 : 1 + random.nextInt(4);
        for (int i = 0; i < times && bytes.length > 0; i++) {
            bytes = once(bytes, other);
        }
        return bytes;
    }

    private byte[] once(byte[] bytes, byte[] other) {
        boolean fits = begins(bytes, 'S', 'I', 'M', 'P', 'L', 'E');
        boolean text = bytes[0] == '{' || bytes[0] == 'f' || Character.isDigit(bytes[0]);
        if (text && random.nextInt(3) > 0) {
            return otherToken(bytes);
        }
        if (fits && random.nextInt(3) > 0) {
            return otherCard(bytes);
        }
        int at = random.nextInt(random.nextBoolean() ? Math.min(HEAD_BYTES, bytes.length) : bytes.length);
        return switch (random.nextInt(8)) {
            case 0 -> set(bytes, at, new byte[] {(byte) (bytes[at] ^ 1 << random.nextInt(8))});
            case 1 -> set(bytes, at, new byte[] {(byte) random.nextInt(256)});
            case 2, 3 -> set(bytes, at, number());
            case 4 -> Arrays.copyOf(bytes, at);
            case 5 -> spliced(bytes, at, Math.min(bytes.length, at + 1 + random.nextInt(200)), new byte[0]);
            case 6 -> spliced(bytes, at, at, Arrays.copyOfRange(bytes, at / 2, Math.min(bytes.length, at / 2 + 100)));
            default -> {
                int from = random.nextInt(other.length);
                yield spliced(
                        bytes,
                        at,
                        Math.min(bytes.length, at + random.nextInt(100)),
                        Arrays.copyOfRange(other, from, Math.min(other.length, from + 1 + random.nextInt(300))));
            }
        };
    }

    private byte[] number() {
        long value = NUMBERS[random.nextInt(NUMBERS.length)];
        ByteBuffer eight = ByteBuffer.allocate(8)
                .order(random.nextBoolean() ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN)
                .putLong(value);
        int length = 1 << random.nextInt(4);
        boolean big = eight.order() == ByteOrder.BIG_ENDIAN;
        return Arrays.copyOfRange(eight.array(), big ? 8 - length : 0, big ? 8 : length);
    }

    private static byte[] set(byte[] bytes, int at, byte[] part) {
        for (int i = 0; i < part.length && at + i < bytes.length; i++) {
            bytes[at + i] = part[i];
        }
        return bytes;
    }

    private static byte[] spliced(byte[] bytes, int from, int until, byte[] part) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(bytes, 0, from);
        out.writeBytes(part);
        out.write(bytes, until, bytes.length - until);
        return out.toByteArray();
    }

    /** Another value in one of the first cards, or another card. */
    private byte[] otherCard(byte[] bytes) {
        int card = CARD_BYTES * random.nextInt(Math.max(1, Math.min(72, bytes.length / CARD_BYTES)));
        String value = random.nextBoolean()
                ? Long.toString(NUMBERS[random.nextInt(NUMBERS.length)])
                : WORDS.get(random.nextInt(WORDS.size()));
        return set(
                bytes,
                card + 10,
                value.substring(0, Math.min(70, value.length())).getBytes(StandardCharsets.UTF_8));
    }

    private byte[] otherToken(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        List<MatchResult> tokens = TOKEN.matcher(text).results().toList();
        if (tokens.isEmpty()) {
            return bytes;
        }
        MatchResult token = tokens.get(random.nextInt(tokens.size()));
        String word = random.nextInt(4) > 0
                ? WORDS.get(random.nextInt(WORDS.size()))
                : tokens.get(random.nextInt(tokens.size())).group();
        return (text.substring(0, token.start()) + word + text.substring(token.end())).getBytes(StandardCharsets.UTF_8);
    }

    private static boolean begins(byte[] bytes, int... magic) {
        for (int i = 0; i < magic.length; i++) {
            if (i >= bytes.length || (bytes[i] & 0xff) != magic[i]) {
                return false;
            }
        }
        return true;
    }

    /** With the checksums of what the chunks hold now, so that the damage gets to the decoder. */
    private static byte[] withRightSums(byte[] png) {
        int at = PNG_SIGNATURE_BYTES;
        while (at + 12 <= png.length) {
            int length = ByteBuffer.wrap(png).getInt(at);
            if (length < 0 || length > png.length - at - 12) {
                break;
            }
            CRC32 sum = new CRC32();
            sum.update(png, at + 4, length + 4);
            ByteBuffer.wrap(png).putInt(at + 8 + length, (int) sum.getValue());
            at += 12 + length;
        }
        return png;
    }

    private static byte[] unpacked(byte[] gzip) {
        try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(gzip))) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] packed(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
