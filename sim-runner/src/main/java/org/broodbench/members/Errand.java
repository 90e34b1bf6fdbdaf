package org.broodbench.members;

import com.hazelcast.core.HazelcastInstance;
import com.hazelcast.core.HazelcastInstanceAware;
import com.hazelcast.nio.ObjectDataInput;
import com.hazelcast.nio.ObjectDataOutput;
import com.hazelcast.nio.serialization.DataSerializableFactory;
import com.hazelcast.nio.serialization.IdentifiedDataSerializable;
import java.io.IOException;
import java.util.concurrent.Callable;

/** Carries a question to the {@link Hand} of a member; itself nothing but its bytes. */
final class Errand implements Callable<byte[]>, IdentifiedDataSerializable, HazelcastInstanceAware {
  /** Name of the executor that does errands. */
  static final String EXECUTOR = "errands";

  /** Where in a member's context its hand is. */
  static final String HAND = "hand";

  static final int FACTORY = 1;
  private static final int CLASS = 1;

  private byte[] question;
  private Hand hand;

  Errand(byte[] question) {
    this.question = question;
  }

  /** Makes errands without words, to be read into. */
  static DataSerializableFactory factory() {
    return id -> id == CLASS ? new Errand(null) : null;
  }

  @Override
  public void setHazelcastInstance(HazelcastInstance member) {
    hand = (Hand) member.getUserContext().get(HAND);
  }

  @Override
  public byte[] call() {
    return hand.answer(question);
  }

  @Override
  public int getFactoryId() {
    return FACTORY;
  }

  @Override
  public int getClassId() {
    return CLASS;
  }

  @Override
  public void writeData(ObjectDataOutput out) throws IOException {
    out.writeByteArray(question);
  }

  @Override
  public void readData(ObjectDataInput in) throws IOException {
    question = in.readByteArray();
  }
}
