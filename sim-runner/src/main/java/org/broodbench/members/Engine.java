package org.broodbench.members;

import com.hazelcast.client.HazelcastClient;
import com.hazelcast.client.config.ClientConfig;
import com.hazelcast.client.config.ClientConnectionStrategyConfig.ReconnectMode;
import com.hazelcast.client.config.RoutingMode;
import com.hazelcast.config.ClassFilter;
import com.hazelcast.config.Config;
import com.hazelcast.config.ExecutorConfig;
import com.hazelcast.config.InterfacesConfig;
import com.hazelcast.config.JavaSerializationFilterConfig;
import com.hazelcast.config.JoinConfig;
import com.hazelcast.config.NetworkConfig;
import com.hazelcast.config.SerializationConfig;
import com.hazelcast.config.SocketInterceptorConfig;
import com.hazelcast.core.HazelcastException;
import com.hazelcast.core.HazelcastInstance;
import com.hazelcast.core.IExecutorService;
import com.hazelcast.instance.impl.HazelcastInstanceFactory;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.util.HexFormat;
import java.util.concurrent.ExecutionException;

/**
 * The only class that starts the engine. All that it could do of itself is off: finding others,
 * reporting home, its pages and queries, and making Java objects from what it is sent.
 */
final class Engine {
  /** Most time that a member takes to answer a call, ms; own choice. */
  private static final int ANSWER_MILLIS = 10_000;

  /** A member that refused is called again for so long, ms; own choice. */
  private static final int AGAIN_MILLIS = 3000;

  /** A member that says nothing for so long is gone, ms; own choice. */
  private static final int SILENT_MILLIS = 20_000;

  private Engine() {}

  /** A member of this process; it listens until it is closed. */
  record Listening(HazelcastInstance engine) implements AutoCloseable {
    int port() {
      return engine.getCluster().getLocalMember().getAddress().getPort();
    }

    @Override
    public void close() {
      engine.getLifecycleService().terminate();
    }
  }

  /**
   * Begins to listen.
   *
   * @param host an address of this machine
   * @param port 0 for a free one
   * @param hand answers
   * @throws IOException where it cannot listen there
   */
  static Listening listen(String host, int port, Secret secret, Hand hand, int threads)
      throws IOException {
    refuseTaken(host, port);
    quiet();
    Config config = new Config();
    config.setClusterName(clusterName(secret));
    config.setProperty("hazelcast.phone.home.enabled", "false");
    config.setProperty("hazelcast.shutdownhook.enabled", "false");
    config.setProperty("hazelcast.socket.bind.any", "false");
    config.getMetricsConfig().setEnabled(false);
    config.getJetConfig().setEnabled(false);
    config.getManagementCenterConfig().setScriptingEnabled(false);
    config.getManagementCenterConfig().setConsoleEnabled(false);
    config.getManagementCenterConfig().setDataAccessEnabled(false);
    config.addExecutorConfig(new ExecutorConfig(Errand.EXECUTOR, threads));
    config.getUserContext().put(Errand.HAND, hand);
    plainBytes(config.getSerializationConfig());
    NetworkConfig network = config.getNetworkConfig();
    network.setPort(port).setPortAutoIncrement(false);
    network.setInterfaces(new InterfacesConfig().setEnabled(true).addInterface(host));
    network.setPublicAddress(host);
    Door door = new Door(secret);
    network.setSocketInterceptorConfig(
        new SocketInterceptorConfig().setEnabled(true).setImplementation(door));
    JoinConfig join = network.getJoin();
    join.getAutoDetectionConfig().setEnabled(false);
    join.getMulticastConfig().setEnabled(false);
    join.getTcpIpConfig().setEnabled(false);
    try {
      return new Listening(
          HazelcastInstanceFactory.newHazelcastInstance(config, null, new DoorOfMember(door)));
    } catch (RuntimeException e) { // the engine has no type of its own for it
      throw new IOException(e.getMessage(), e);
    }
  }

  /**
   * Calls a member.
   *
   * @throws IOException where there is none, or it refuses
   */
  static Line call(String host, int port, Secret secret) throws IOException {
    quiet();
    ClientConfig config = new ClientConfig();
    config.setClusterName(clusterName(secret));
    config.setProperty("hazelcast.client.heartbeat.interval", String.valueOf(SILENT_MILLIS / 8));
    config.setProperty("hazelcast.client.heartbeat.timeout", String.valueOf(SILENT_MILLIS));
    config.getMetricsConfig().setEnabled(false);
    plainBytes(config.getSerializationConfig());
    Door door = new Door(secret);
    config
        .getNetworkConfig()
        .addAddress(host.contains(":") ? "[" + host + "]:" + port : host + ":" + port)
        .setConnectionTimeout(ANSWER_MILLIS)
        .setRedoOperation(false)
        .setSocketInterceptorConfig(
            new SocketInterceptorConfig().setEnabled(true).setImplementation(door));
    config.getNetworkConfig().getClusterRoutingConfig().setRoutingMode(RoutingMode.SINGLE_MEMBER);
    config.getConnectionStrategyConfig().setReconnectMode(ReconnectMode.OFF);
    config
        .getConnectionStrategyConfig()
        .getConnectionRetryConfig()
        .setClusterConnectTimeoutMillis(AGAIN_MILLIS);
    HazelcastInstance client;
    try {
      client = HazelcastClient.newHazelcastClient(config);
    } catch (HazelcastException | IllegalStateException e) {
      throw new IOException(door.refusal(), e);
    }
    IExecutorService executor = client.getExecutorService(Errand.EXECUTOR);
    return new Line() {
      @Override
      public byte[] ask(byte[] question) throws IOException {
        try {
          return executor.submit(new Errand(question)).get();
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
          throw new IOException("interrupted", e);
        } catch (ExecutionException | RuntimeException e) {
          // the engine has a dozen ways to say that a connection is lost
          throw new IOException("the connection is lost", e);
        }
      }

      @Override
      public void close() {
        client.getLifecycleService().terminate();
      }
    };
  }

  /** Tries the address first: the engine would fill the console with the reasons. */
  private static void refuseTaken(String host, int port) throws IOException {
    try (ServerSocket tried = new ServerSocket()) {
      tried.bind(new InetSocketAddress(InetAddress.getByName(host), port));
    }
  }

  /** The engine logs where all libraries of the program do; its first words heed this alone. */
  private static void quiet() {
    System.setProperty("hazelcast.logging.type", "slf4j");
  }

  /** Nothing that arrives becomes a Java object by its class's name. */
  private static void plainBytes(SerializationConfig config) {
    JavaSerializationFilterConfig nothing =
        new JavaSerializationFilterConfig()
            .setDefaultsDisabled(true)
            .setWhitelist(new ClassFilter().addClasses("none"));
    config.setJavaSerializationFilterConfig(nothing);
    config.getCompactSerializationConfig().setZeroConfigFilter(nothing);
    config.addDataSerializableFactory(Errand.FACTORY, Errand.factory());
  }

  /** Members of another secret are another cluster to the engine as well. */
  private static String clusterName(Secret secret) {
    return HexFormat.of().formatHex(secret.prove("name of the cluster")).substring(0, 16);
  }
}
