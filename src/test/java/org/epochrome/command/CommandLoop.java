package org.epochrome.command;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Runs one command line after the other in the folder that this Java was started in: from standard input it reads the number of
 * words and the words, to standard output it writes the exit code and what was printed on both outputs.
 */
public final class CommandLoop {
    private CommandLoop() {}

    public static void main(String[] args) throws IOException {
        DataInputStream in = new DataInputStream(System.in);
        DataOutputStream out = new DataOutputStream(System.out);
        while (true) {
            Object[] words;
            try {
                words = new Object[in.readInt()];
            } catch (EOFException e) {
                return;
            }
            for (int i = 0; i < words.length; i++) {
                words[i] = in.readUTF();
            }
            Ran ran = Ran.of(words);
            out.writeInt(ran.code());
            for (String printed : List.of(ran.out(), ran.err())) {
                byte[] bytes = printed.getBytes(StandardCharsets.UTF_8);
                out.writeInt(bytes.length);
                out.write(bytes);
            }
            out.flush();
        }
    }
}
