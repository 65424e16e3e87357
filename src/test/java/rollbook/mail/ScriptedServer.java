package rollbook.mail;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import org.springframework.mail.javamail.JavaMailSenderImpl;

/** An SMTP server that answers what a test says: a reply for a command, or an empty one to hang up. */
final class ScriptedServer implements AutoCloseable {
    /** The end of the message's data; what the reply stands for that takes it over. */
    static final String DOT = ".";

    private final ServerSocket socket;
    private final Map<String, String> replies;
    private final List<String> heard = new CopyOnWriteArrayList<>();

    ScriptedServer(Map<String, String> replies) {
        this.replies = replies;
        try {
            socket = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Thread server = new Thread(this::serve, "scripted SMTP server");
        server.setDaemon(true);
        server.start();
    }

    JavaMailSenderImpl client() {
        JavaMailSenderImpl client = new JavaMailSenderImpl();
        client.setHost(socket.getInetAddress().getHostAddress());
        client.setPort(socket.getLocalPort());
        return client;
    }

    /** The commands, without the message. */
    List<String> heard() {
        return heard;
    }

    private void serve() {
        while (!socket.isClosed()) {
            try (Socket connection = socket.accept()) {
                talk(connection);
            } catch (IOException hungUp) {
                // The next one, if any.
            }
        }
    }

    private void talk(Socket connection) throws IOException {
        BufferedReader in =
                new BufferedReader(new InputStreamReader(connection.getInputStream(), StandardCharsets.US_ASCII));
        Writer out = new java.io.OutputStreamWriter(connection.getOutputStream(), StandardCharsets.US_ASCII);
        if (!say(out, replies.getOrDefault("", "220 ready"))) {
            return;
        }
        boolean data = false;
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            if (data && !line.equals(DOT)) {
                continue;
            }
            String command = data ? DOT : line.split(" ")[0].toUpperCase(Locale.ROOT);
            heard.add(command);
            String reply = replies.getOrDefault(command, command.equals("DATA") ? "354 go on" : "250 fine");
            data = command.equals("DATA") && reply.startsWith("354");
            if (!say(out, reply)) {
                return;
            }
        }
    }

    private static boolean say(Writer out, String reply) throws IOException {
        if (reply.isEmpty()) {
            return false;
        }
        out.write(reply + "\r\n");
        out.flush();
        return true;
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
