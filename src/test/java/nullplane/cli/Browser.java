package nullplane.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * A real browser without a window, spoken to over its own debugging socket: opens a page at a width
 * and tells what went wrong and what it asked the network for.
 */
final class Browser implements AutoCloseable {
  private static final long PATIENCE_S = 40;
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Process process;
  private final Path profile;
  private final WebSocket socket;
  private final BlockingQueue<JsonNode> heard;
  private int lastId;

  /** What a page did while it was opened. */
  record Seen(List<String> faults, List<String> requests, JsonNode answer) {}

  private Browser(Process process, Path profile, WebSocket socket, BlockingQueue<JsonNode> heard) {
    this.process = process;
    this.profile = profile;
    this.socket = socket;
    this.heard = heard;
  }

  /** Returns the browser of this machine, if it has one. */
  static Optional<Path> installed() {
    return Stream.of(System.getenv().getOrDefault("PATH", "").split(":", -1))
        .filter(folder -> !folder.isEmpty())
        .map(folder -> Path.of(folder, "chromium"))
        .filter(Files::isExecutable)
        .findFirst();
  }

  static Browser start(Path program) throws Exception {
    Path profile = Files.createTempDirectory("nullplane-browser");
    Process process =
        new ProcessBuilder(
                program.toString(),
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--no-first-run",
                "--user-data-dir=" + profile,
                "--remote-debugging-port=0",
                "about:blank")
            .redirectErrorStream(true)
            .redirectOutput(profile.resolve("log").toFile())
            .start();
    Path portFile = profile.resolve("DevToolsActivePort");
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
    while (!Files.exists(portFile) || Files.readAllLines(portFile).size() < 2) {
      if (System.nanoTime() > end || !process.isAlive()) {
        process.destroyForcibly();
        throw new IOException(
            "the browser did not start: " + Files.readString(profile.resolve("log")));
      }
      Thread.sleep(50);
    }
    List<String> lines = Files.readAllLines(portFile);
    BlockingQueue<JsonNode> heard = new LinkedBlockingQueue<>();
    WebSocket socket =
        HttpClient.newHttpClient()
            .newWebSocketBuilder()
            .buildAsync(URI.create("ws://127.0.0.1:" + lines.get(0) + lines.get(1)), new Ear(heard))
            .get(PATIENCE_S, TimeUnit.SECONDS);
    return new Browser(process, profile, socket, heard);
  }

  /** Gathers the pieces of what the browser says. */
  private static final class Ear implements WebSocket.Listener {
    private final BlockingQueue<JsonNode> heard;
    private final StringBuilder piece = new StringBuilder();

    Ear(BlockingQueue<JsonNode> heard) {
      this.heard = heard;
    }

    @Override
    public CompletionStage<?> onText(WebSocket webSocket, CharSequence data, boolean last) {
      piece.append(data);
      if (last) {
        try {
          heard.add(JSON.readTree(piece.toString()));
        } catch (IOException e) {
          throw new IllegalStateException(e);
        }
        piece.setLength(0);
      }
      webSocket.request(1);
      return null;
    }
  }

  /**
   * Opens a page and evaluates an expression in it once it is loaded.
   *
   * @param page the page
   * @param widthPx width of the window (pixels)
   * @param expression what to evaluate; its value must be JSON
   */
  Seen open(Path page, int widthPx, String expression) throws Exception {
    String target =
        ask("", "Target.createTarget", node().put("url", "about:blank")).path("targetId").asText();
    String session =
        ask("", "Target.attachToTarget", node().put("targetId", target).put("flatten", true))
            .path("sessionId")
            .asText();
    for (String domain : List.of("Page", "Network", "Log", "Runtime")) {
      ask(session, domain + ".enable", node());
    }
    ask(
        session,
        "Emulation.setDeviceMetricsOverride",
        node()
            .put("width", widthPx)
            .put("height", 800)
            .put("deviceScaleFactor", 1)
            .put("mobile", widthPx < 600));
    List<JsonNode> events = new ArrayList<>();
    ask(session, "Page.navigate", node().put("url", page.toUri().toString()), events);
    while (events.stream()
        .noneMatch(e -> e.path("method").asText().equals("Page.loadEventFired"))) {
      events.add(next());
    }
    JsonNode result =
        ask(
            session,
            "Runtime.evaluate",
            node().put("expression", expression).put("returnByValue", true),
            events);
    List<String> faults = new ArrayList<>();
    List<String> requests = new ArrayList<>();
    for (JsonNode event : events) {
      switch (event.path("method").asText()) {
        case "Network.requestWillBeSent" -> requests.add(event.at("/params/request/url").asText());
        case "Log.entryAdded", "Runtime.consoleAPICalled", "Runtime.exceptionThrown" ->
            faults.add(event.path("params").toString());
        default -> {
          // the rest is about how the page is drawn
        }
      }
    }
    ask("", "Target.closeTarget", node().put("targetId", target));
    return new Seen(faults, requests, result.at("/result/value"));
  }

  private static ObjectNode node() {
    return JSON.createObjectNode();
  }

  private JsonNode ask(String session, String method, ObjectNode params) throws Exception {
    return ask(session, method, params, new ArrayList<>());
  }

  private JsonNode ask(String session, String method, ObjectNode params, List<JsonNode> events)
      throws Exception {
    int id = ++lastId;
    ObjectNode message = node().put("id", id).put("method", method);
    if (!session.isEmpty()) {
      message.put("sessionId", session);
    }
    message.set("params", params);
    socket.sendText(message.toString(), true).get(PATIENCE_S, TimeUnit.SECONDS);
    while (true) {
      JsonNode answer = next();
      if (answer.path("id").asInt() == id) {
        if (answer.has("error")) {
          throw new IOException(method + ": " + answer.path("error"));
        }
        return answer.path("result");
      }
      events.add(answer);
    }
  }

  private JsonNode next() throws Exception {
    JsonNode message = heard.poll(PATIENCE_S, TimeUnit.SECONDS);
    if (message == null) {
      throw new IOException("the browser fell silent");
    }
    return message;
  }

  @Override
  public void close() throws Exception {
    socket.abort();
    process.destroy();
    if (!process.waitFor(10, TimeUnit.SECONDS)) {
      process.destroyForcibly().waitFor();
    }
    try (Stream<Path> files = Files.walk(profile)) {
      files.sorted(java.util.Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
    }
  }
}
