@echo off
rem Starts the program out of its own folder: lib beside bin. Works from any folder.
setlocal
set "BROODBENCH_JAVA=java"
if defined JAVA_HOME set "BROODBENCH_JAVA=%JAVA_HOME%\bin\java"
"%BROODBENCH_JAVA%" -XX:+UseSerialGC -Djava.awt.headless=true -Xshare:auto -Xlog:disable -Xlog:all=error:stderr %BROODBENCH_JAVA_OPTS% -jar "%~dp0..\lib\broodbench.jar" %*
exit /b %ERRORLEVEL%
