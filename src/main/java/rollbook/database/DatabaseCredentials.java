package rollbook.database;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Properties;

/** The passwords of the embedded server's two roles, made on the first start and kept in the data folder. */
record DatabaseCredentials(Path folder, String superuser, String owner) {
    private static final int PASSWORD_BYTES = 24;

    static DatabaseCredentials in(Path folder) throws IOException {
        Path file = folder.resolve("database-passwords.properties");
        if (!Files.exists(file)) {
            Properties fresh = new Properties();
            fresh.setProperty("superuser", randomPassword());
            fresh.setProperty("owner", randomPassword());
            StringWriter text = new StringWriter();
            fresh.store(text, "Passwords of the embedded PostgreSQL server. Keep this file with the folder's backup.");
            // Written beside and moved, so that a crash leaves either no file or a whole one.
            Path unfinished = folder.resolve("database-passwords.tmp");
            writePrivately(unfinished, text.toString());
            Files.move(unfinished, file);
        }
        Properties stored = new Properties();
        stored.load(new StringReader(Files.readString(file)));
        return new DatabaseCredentials(folder, stored.getProperty("superuser"), stored.getProperty("owner"));
    }

    /** The file that initdb reads the superuser's password from; the caller deletes it. */
    Path writeSuperuserFile() throws IOException {
        Path file = folder.resolve("superuser-password.tmp");
        writePrivately(file, superuser + "\n");
        return file;
    }

    private static String randomPassword() {
        byte[] random = new byte[PASSWORD_BYTES];
        new SecureRandom().nextBytes(random);
        return HexFormat.of().formatHex(random);
    }

    private static void writePrivately(Path file, String text) throws IOException {
        Files.deleteIfExists(file);
        if (FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
            Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        }
        Files.writeString(file, text);
    }
}
